using Heaveline.Quantities;

namespace Heaveline.Causes;

/// <summary>
/// The neutral car that a car is held against to find why it pitches. Common practice, no source: change a value where another suits better.
/// </summary>
public sealed record WhyOptions
{
    /// <summary>The usual neutral values.</summary>
    public static WhyOptions Default { get; } = new();

    /// <summary>Mean damping ratio (–). Default 0.30.</summary>
    public double Damping { get; init => field = Checked.Within(value, 0.01, 2.0); } = 0.30;

    /// <summary>Dynamic index (–). Default 1.</summary>
    public double DynamicIndex { get; init => field = Checked.Within(value, 0.3, 2.0); } = 1.0;

    /// <summary>Tyre rate over the rate of the axle's springs (–). Default 10.</summary>
    public double TyreRatio { get; init => field = Checked.Within(value, 1.0, 100.0); } = 10.0;

    /// <summary>Wheelbase, m; null: 2.7 for a car, 1.4 for a two-wheeler.</summary>
    public double? Wheelbase { get; init => field = value is { } v ? Checked.Within(v, 0.5, 10.0) : null; }

    /// <summary>
    /// Rear/front frequency ratio (–); null: the one that brings both ends into step at the speed, at most <see cref="LargestRatio"/>.
    /// </summary>
    public double? Ratio { get; init => field = value is { } v ? Checked.Within(v, 0.5, 2.0) : null; }

    /// <summary>No larger frequency ratio is taken for neutral (–). Default 1.3.</summary>
    public double LargestRatio { get; init => field = Checked.Within(value, 1.0, 2.0); } = 1.3;

    /// <summary>Up to so many causes every combination is run; with more, permutations are drawn. 1 to 12, default 8.</summary>
    public int MostExact { get; init => field = (int)Checked.Within(value, 1, 12); } = 8;

    /// <summary>Number of drawn permutations, each with its reverse. 2 to 1000, default 16.</summary>
    public int Permutations { get; init => field = (int)Checked.Within(value, 2, 1000); } = 16;

    /// <summary>Seed of the permutations.</summary>
    public ulong Seed { get; init; } = 1;
}
