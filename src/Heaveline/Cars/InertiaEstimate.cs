using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>Estimates of the inertias that nobody can weigh, with their bands.</summary>
public static class InertiaEstimate
{
    /// <summary>
    /// Pitch dynamic index k²/(b·c): median 0.998 over 204 road vehicles of a public inertial-parameter database (quartiles 0.927 and 1.078,
    /// range 0.816–1.298). The half-width 0.22 is two standard deviations of a normal spread with those quartiles: 2 · (1.078 − 0.927)/1.349.
    /// </summary>
    public static Amount<Plain> DynamicIndex { get; } = new(0.998, new Doubt(0.224, "inertia database", OfOneCar: true));

    /// <summary>Lower quartile, median and upper quartile of the dynamic index in that database (–).</summary>
    public static IReadOnlyList<double> Quartiles { get; } = [0.927, 0.998, 1.078];

    /// <summary>Smallest and largest dynamic index in that database (–).</summary>
    public static IReadOnlyList<double> Range { get; } = [0.816, 1.298];

    /// <summary>Roll radius of gyration of the sprung body as a share of the mean track (–). Common practice, no source: 0.40 ± 20 %.</summary>
    public static Amount<Plain> RollGyrationPerTrack { get; } = new(0.40, new Doubt(0.08, "roll gyration rule", OfOneCar: true));
}
