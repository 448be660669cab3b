namespace Heaveline.Causes;

/// <summary>One cause of a car's pitch with its size.</summary>
public sealed record PitchCause
{
    /// <summary>Which cause.</summary>
    public required PitchCauseKind Kind { get; init; }

    /// <summary>How the car has it, in words.</summary>
    public required string Is { get; init; }

    /// <summary>What it was held against, in words.</summary>
    public required string Neutral { get; init; }

    /// <summary>
    /// How much less the measure is when this alone is neutral, in the measure's unit; negative when the car pitches more without it. NaN when it
    /// cannot be taken out alone.
    /// </summary>
    public required double Alone { get; init; }

    /// <summary>
    /// Its fair share of the difference to the neutral car, averaged over the orders of taking causes out; negative for what helps.
    /// </summary>
    public required double Share { get; init; }

    /// <summary>Fair share over the car's value (–).</summary>
    public required double Relative { get; init; }

    /// <summary>How far its value is from neutral (–), where it is one number; otherwise NaN.</summary>
    internal double Beyond { get; init; } = double.NaN;

    /// <summary>The cause and its size in a sentence.</summary>
    public required string Sentence { get; init; }
}
