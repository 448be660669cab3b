using System.Collections.Immutable;

namespace Heaveline.Films;

/// <summary>The body of the fitted car under the wheels that were seen.</summary>
/// <param name="Front">Height over the front axle, m, a sample of the pass each.</param>
/// <param name="Rear">The same over the rear axle.</param>
public sealed record FittedPass(ImmutableArray<double> Front, ImmutableArray<double> Rear);
