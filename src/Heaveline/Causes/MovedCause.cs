namespace Heaveline.Causes;

/// <summary>How a road test's second loading moves one cause, and what that alone makes of the predicted change.</summary>
public sealed record MovedCause
{
    /// <summary>The cause.</summary>
    public required PitchCauseKind Kind { get; init; }

    /// <summary>Its value under the first loading (–): of the damping split, rear over front.</summary>
    public required double First { get; init; }

    /// <summary>Its value under the second loading (–).</summary>
    public required double Second { get; init; }

    /// <summary>
    /// The measure under the second loading less the same with the cause set back to its value under the first; NaN where no such car runs.
    /// </summary>
    public required double Part { get; init; }

    /// <summary>By how much of its value the loading moves it (–).</summary>
    internal double Relative => Math.Abs((Second / First) - 1.0);
}
