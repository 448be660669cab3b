namespace Heaveline.Drives.Comparison;

/// <summary>A pass that stands apart from all the others.</summary>
/// <param name="Pass">The pass.</param>
/// <param name="Distance">How far, in standard errors of the others' scatter.</param>
public sealed record OddPass(ComparedPass Pass, double Distance);
