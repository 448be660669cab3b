using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>The numbers of a road, a column a track.</summary>
public static class RoadTable
{
    private const string Page = "theory/roads.md";
    private const string Density = "G4";

    private static readonly Measure<RoadRoughness> ClassProbability = Of(
        "class-probability", "probability of the class", In.Percent, 0, t => t.Fit is { } fit ? fit.ProbabilityOf(fit.Class) : null,
        "How sure it is that the road is of the class of ISO 8608 in which its density lies.");

    private static readonly Measure<Profile>[] Heights =
    [
        new("length", "length", In.Metres, 2, p => p.End - p.Start, "Length of the profile.") { Page = Page },
        new("lowest", "lowest height", In.Millimetres, 1, p => Extreme(p, Math.Min), "Lowest height of the profile.") { Page = Page },
        new("highest", "highest height", In.Millimetres, 1, p => Extreme(p, Math.Max), "Greatest height of the profile.") { Page = Page },
    ];

    private static readonly Measure<RoadRoughness>[] Roughness =
    [
        Of("density", "density at 0.1 cycles/m", In.MillionthsOfCubicMetres, 4, t => t.Fit?.Density.Si,
            "Displacement density of the straight line of ISO 8608 at its reference.") with { Format = Density },
        Of("density-low", "its 95 % interval, from", In.MillionthsOfCubicMetres, 4, t => t.Fit?.DensityInterval(0.95).Low.Si,
            "Lower end of the density's 95 % interval.") with { Name = "density's 95 % interval, from", Format = Density },
        Of("density-high", "its 95 % interval, to", In.MillionthsOfCubicMetres, 4, t => t.Fit?.DensityInterval(0.95).High.Si,
            "Upper end of the density's 95 % interval.") with { Name = "density's 95 % interval, to", Format = Density },
        Of("waviness", "waviness", In.Plain, 2, t => t.Fit?.Waviness, "Power with which the density falls over the spatial frequency."),
        ClassProbability,
        Of("roughness-index", "roughness index (IRI)", In.MetresPerKilometre, 2, t => t.Index?.MetresPerKilometre,
            "Travel of the golden car's suspension per distance at 80 km/h."),
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. Heights, .. Roughness];

    /// <summary>The table.</summary>
    /// <param name="road">The road.</param>
    /// <param name="tracks">The roughness of its one track, or of the left and the right.</param>
    public static FactTable Of(Road road, IReadOnlyList<RoadRoughness> tracks)
    {
        ArgumentNullException.ThrowIfNull(road);
        ArgumentNullException.ThrowIfNull(tracks);
        var named = ClassProbability with
        {
            Label = "probability of " + string.Join(" / ", tracks.Select(t => t.Fit?.Class.ToString() ?? "–").Distinct()),
        };
        return new FactTable("Road", tracks.Count == 1 ? ["both wheels"] : ["left", "right"])
            .Add(Heights, tracks.Count == 1 ? [road.Left] : [road.Left, road.Right])
            .Add(Roughness.Select(m => m == ClassProbability ? named : m), tracks);
    }

    private static Measure<RoadRoughness> Of(
        string key, string label, ShownUnit unit, int digits, Func<RoadRoughness, double?> of, string says) =>
        new(key, label, unit, digits, t => of(t) ?? double.NaN, says) { Page = Page };

    private static double Extreme(Profile profile, Func<double, double, double> better)
    {
        var best = profile.StartHeight;
        var before = profile.Start;
        var reader = profile.Reader();
        foreach (var x in profile.Knots)
        {
            // A rounded top lies between two knots.
            reader.At(0.5 * (before + x), out var between, out _);
            reader.At(x, out var here, out _);
            best = better(better(best, between), here);
            before = x;
        }

        return best;
    }
}
