using System.Collections.Immutable;

namespace Heaveline.Drives.Identification;

/// <summary>A hump of a planned drive: its heights at even steps from its start to its end.</summary>
/// <param name="Length">How long it is, m.</param>
/// <param name="Heights">Heights at even steps over the length, m, two or more.</param>
public sealed record PlannedHump(double Length, ImmutableArray<double> Heights);
