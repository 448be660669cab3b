using System.Globalization;
using Heaveline.Files.Roads;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Web.Pages.Parts;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Rides;

/// <summary>The chosen road: what is driven over in the long run, and what is shown of it.</summary>
public sealed record RideRoad
{
    /// <summary>The random road's spectrum; null where the road has no class.</summary>
    public required RoadSpectrum? Spectrum { get; init; }

    /// <summary>A road of heights: the named one, or a sample of the random one.</summary>
    public required Road Heights { get; init; }

    /// <summary>Its left track's roughness, and its right one's where that differs.</summary>
    public required IReadOnlyList<RoadRoughness> Tracks { get; init; }

    /// <summary>The road in words.</summary>
    public required string Words { get; init; }

    /// <summary>Why there is no spectrum; null where there is one.</summary>
    public string? WhyNone { get; init; }

    /// <summary>Whether the heights are a drawn sample of a random road.</summary>
    public required bool IsSample { get; init; }

    /// <summary>Name of the road where it has one of its own.</summary>
    public string? Name { get; init; }

    // A road's roughness takes a while to read, and every choice on the page asks for it again. Files of the garage may change: they are read anew.
    private static readonly Kept<RideRoad> Known = new(24);

    /// <summary>Reads the choice; null, with the reason beside its control, when it cannot be read.</summary>
    internal static RideRoad? Of(RideChoices choices, GarageView garageView, Dictionary<string, string> refused)
    {
        var name = choices.Road ?? RideChoices.UsualRoad;
        if (name == RideChoices.OwnDensity || name.StartsWith("class-", StringComparison.Ordinal))
        {
            return Random(name, choices, refused);
        }

        if (Known.Find(name) is { } known)
        {
            return known;
        }

        var road = garageView.Road(name)?.Road;
        if (road is null)
        {
            refused["road"] = $"There is no road named {name}.";
            return null;
        }

        var one = ReferenceEquals(road.Left, road.Right);
        RoadRoughness[] tracks = one ? [RoadRoughness.Of(road.Left)] : [RoadRoughness.Of(road.Left), RoadRoughness.Of(road.Right)];
        var (spectrum, why) = Line(road, tracks);
        var read = new RideRoad
        {
            Spectrum = spectrum,
            Heights = road,
            Tracks = tracks,
            Words = spectrum is null ? road.Caption : $"a random road of the spectrum fitted to {road.Name}",
            WhyNone = why,
            IsSample = false,
            Name = name,
        };
        if (NamedRoads.All.ContainsKey(name))
        {
            Known.Keep(name, read);
        }

        return read;
    }

    private static RideRoad? Random(string name, RideChoices choices, Dictionary<string, string> refused)
    {
        var waviness = Number(choices.Waviness ?? RideChoices.UsualWaviness, 0.5, 5.0, "waviness", "waviness", refused);
        double density;
        string words;
        if (name == RideChoices.OwnDensity)
        {
            density = 1e-6 * Number(choices.Density ?? RideChoices.UsualDensity, 0.01, 1e6, "density", "density in 1e-6 m³", refused);
            words = FormattableString.Invariant($"a random road of {1e6 * density:G4}e-6 m³ at 0.1 cycles/m");
        }
        else if (RoadClass.All.FirstOrDefault(c => name == $"class-{c.Letter}") is { } known)
        {
            density = known.Mean.Si;
            words = $"a random road of {known}";
        }
        else
        {
            refused["road"] = $"“{name}” is no road class: there are A to H, A the smoothest.";
            return null;
        }

        if (refused.ContainsKey("waviness") || refused.ContainsKey("density"))
        {
            return null;
        }

        var key = FormattableString.Invariant($"{name} {density:R} {waviness:R}");
        if (Known.Find(key) is { } drawn)
        {
            return drawn;
        }

        var spectrum = new RoadSpectrum { Density = new Amount<RoadDensity>(density), Waviness = waviness };
        var heights = Road.From(new RandomRoad { Spectrum = spectrum, Track = new Amount<Length>(1.5), Length = new Amount<Length>(500.0), Seed = 1 });
        var made = new RideRoad
        {
            Spectrum = spectrum,
            Heights = heights,
            Tracks = [RoadRoughness.Of(heights.Left), RoadRoughness.Of(heights.Right)],
            Words = waviness == 2.0 ? words : FormattableString.Invariant($"{words}, waviness {waviness:G3}"),
            IsSample = true,
        };
        Known.Keep(key, made);
        return made;
    }

    private static (RoadSpectrum? Spectrum, string? Why) Line(Road road, RoadRoughness[] tracks)
    {
        if (tracks[0].Fit is not { } fit)
        {
            return (null, tracks[0].Refused.Count > 0 ? string.Join(' ', tracks[0].Refused) : $"{road.Name} has no spectrum.");
        }

        try
        {
            return (fit.Line, null);
        }
        catch (RefusedValueException refusal)
        {
            return (null, refusal.Message);
        }
    }

    private static double Number(string words, double low, double high, string control, string what, Dictionary<string, string> refused)
    {
        if (double.TryParse(words.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= low && value <= high)
        {
            return value;
        }

        refused[control] = FormattableString.Invariant($"“{words}” is no {what} between {low:G4} and {high:G4}.");
        return double.NaN;
    }
}
