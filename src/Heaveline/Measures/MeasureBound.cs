using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>A number that is to be at least, or at most, so much.</summary>
public sealed record MeasureBound
{
    /// <summary>The number.</summary>
    public required Measure Measure { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Whether the number must be at least so much; else at most.</summary>
    public required bool IsLeast { get; init; }

    /// <summary>So much, SI.</summary>
    public required double Limit { get; init => field = Checked.Within(value, double.MinValue, double.MaxValue); }

    /// <summary>Whether a number keeps it; one that does not exist does not.</summary>
    /// <param name="value">SI.</param>
    public bool Holds(double value) => IsLeast ? value >= Limit : value <= Limit;

    /// <summary>In words: "rear/front frequency ratio at least 1.050".</summary>
    public string Words =>
        $"{Measure.Name} {(IsLeast ? "at least" : "at most")} {Measure.Print(Measure.Unit.Of(Limit))}{Measure.Unit.Suffix}";
}
