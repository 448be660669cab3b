using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>The numbers of a road, a column a track.</summary>
public static class RoadTable
{
    /// <summary>The table.</summary>
    /// <param name="road">The road.</param>
    /// <param name="tracks">The roughness of its one track, or of the left and the right.</param>
    public static FactTable Of(Road road, IReadOnlyList<RoadRoughness> tracks)
    {
        ArgumentNullException.ThrowIfNull(road);
        ArgumentNullException.ThrowIfNull(tracks);
        IEnumerable<double?> All(Func<RoadRoughness, double?> of) => tracks.Select(of);
        Profile[] profiles = tracks.Count == 1 ? [road.Left] : [road.Left, road.Right];
        return new FactTable("Road", tracks.Count == 1 ? ["both wheels"] : ["left", "right"])
            .Add("length", "length", "m", "F2", profiles.Select(p => (double?)(p.End - p.Start)))
            .Add("lowest", "lowest height", "mm", "F1", profiles.Select(p => (double?)In.Millimetres.Of(Extreme(p, Math.Min))))
            .Add("highest", "highest height", "mm", "F1", profiles.Select(p => (double?)In.Millimetres.Of(Extreme(p, Math.Max))))
            .Add("density", "density at 0.1 cycles/m", "1e-6 m³", "G4", All(t => 1e6 * t.Fit?.Density.Si))
            .Add("density-low", "its 95 % interval, from", "1e-6 m³", "G4", All(t => 1e6 * t.Fit?.DensityInterval(0.95).Low.Si))
            .Add("density-high", "its 95 % interval, to", "1e-6 m³", "G4", All(t => 1e6 * t.Fit?.DensityInterval(0.95).High.Si))
            .Add("waviness", "waviness", "–", "F2", All(t => t.Fit?.Waviness))
            .Add(
                "class-probability",
                "probability of " + string.Join(" / ", tracks.Select(t => t.Fit?.Class.ToString() ?? "–").Distinct()),
                "%",
                "F0",
                All(t => In.Percent.Of(t.Fit is { } fit ? fit.ProbabilityOf(fit.Class) : null)))
            .Add("roughness-index", "roughness index (IRI)", "m/km", "F2", All(t => t.Index?.MetresPerKilometre));
    }

    private static double Extreme(Profile profile, Func<double, double, double> better)
    {
        var best = profile.StartHeight;
        var before = profile.Start;
        foreach (var x in profile.Knots)
        {
            // A rounded top lies between two knots.
            best = better(better(best, profile.Height(0.5 * (before + x))), profile.Height(x));
            before = x;
        }

        return best;
    }
}
