using Heaveline.Files.Roads;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Rides;

/// <summary>The roads that are ridden on. A road's roughness takes a while to read, and every choice on the page asks for it again.</summary>
internal sealed class RideRoads : IDisposable
{
    // Files of the garage may change: they are read anew.
    private readonly AnswerCache<RideRoad> known = new(24);

    /// <summary>The road that is chosen; null where it is refused.</summary>
    public RideRoad? Read(AskedReader reader)
    {
        var name = reader.Text(RidePageChoices.Road)!;
        if (name == RidePageChoices.OwnDensity)
        {
            return reader.Number(RidePageChoices.Density) is { } density
                ? Random(reader, FormattableString.Invariant($"{density:G4}e-6 m³ at 0.1 cycles/m"), 1e-6 * density)
                : null;
        }

        if (name.StartsWith(RidePageChoices.ClassWord, StringComparison.Ordinal))
        {
            return reader.Class(RidePageChoices.Road, name[RidePageChoices.ClassWord.Length..]) is { } of
                ? Random(reader, of.ToString(), of.Mean.Si)
                : null;
        }

        return reader.Road(RidePageChoices.Road) is not { } road ? null
            : NamedRoads.All.ContainsKey(name) ? Known(name, () => RideRoad.Of(road))
            : RideRoad.Of(road);
    }

    public void Dispose() => known.Dispose();

    private RideRoad? Random(AskedReader reader, string name, double density) => reader.Number(RidePageChoices.Waviness) is { } waviness
        ? Known(FormattableString.Invariant($"{density:R} {waviness:R} {name}"), () => RideRoad.Random(name, density, waviness))
        : null;

    private RideRoad Known(string key, Func<RideRoad> read)
    {
        if (known.Find(key) is not { } road)
        {
            known.Keep(key, road = read());
        }

        return road;
    }
}
