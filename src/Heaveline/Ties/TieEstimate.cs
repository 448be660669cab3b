using Heaveline.Cars;

namespace Heaveline.Ties;

/// <summary>One number of the car as the readings leave it.</summary>
public sealed record TieEstimate
{
    /// <summary>What it is of.</summary>
    public required TieNumber Number { get; init; }

    /// <summary>The axle.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>As the car file has it, in the number's own unit.</summary>
    public required double File { get; init; }

    /// <summary>What was thought possible before the readings, 90 %.</summary>
    public required (double Low, double High) Before { get; init; }

    /// <summary>The likeliest value.</summary>
    public required double Value { get; init; }

    /// <summary>Lower end of its 90 % interval.</summary>
    public required double Low { get; init; }

    /// <summary>Upper end.</summary>
    public required double High { get; init; }

    /// <summary>One less the standard deviation after the readings over that before (–): 0 where they say nothing.</summary>
    public required double Learned { get; init; }

    /// <summary>Why it is not said; <see cref="TieRefusal.None"/> where it is: the readings are believed and halve its doubt.</summary>
    public required TieRefusal Refusal { get; init; }

    /// <summary>Whether it is said.</summary>
    public bool IsSaid => Refusal == TieRefusal.None;
}
