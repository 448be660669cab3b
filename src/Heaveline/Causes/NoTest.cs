namespace Heaveline.Causes;

/// <summary>A cause without a road test.</summary>
/// <param name="Kind">The cause.</param>
/// <param name="Reason">Why there is none.</param>
/// <param name="Nearest">The two loadings that come nearest; null where none can be driven.</param>
internal sealed record NoTest(PitchCauseKind Kind, NoTestReason Reason, PlannedTest? Nearest);
