using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What the maker of a kit promises of a car that it is fitted to: a number that is at least, or at most, so much.</summary>
public sealed record TolerancePromise
{
    /// <summary>The number: of the standing car (<see cref="Measure{TSubject}"/> of <see cref="CarAtRest"/>) or of a pass.</summary>
    public required Measure Measure
    {
        get;
        init => field = value is Measure<CarAtRest> or Measure<Pass>
            ? value
            : throw new ArgumentException("A promise is of a standing car or of a pass.", nameof(value));
    }

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
