using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>A number that is to be at least, or at most, so much; what is compared is what is printed.</summary>
public sealed record MeasureBound
{
    // A limit is given with at most so many digits more than its number is printed with.
    private const int MostFurther = 3;

    /// <summary>The number.</summary>
    public required Measure Measure { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Whether the number must be at least so much; else at most.</summary>
    public required bool IsLeast { get; init; }

    /// <summary>So much, SI.</summary>
    public required double Limit { get; init => field = Checked.Within(value, double.MinValue, double.MaxValue); }

    /// <summary>Whether a number keeps it, both as printed: none of "1.050" is said to miss 1.050. One that does not exist does not.</summary>
    /// <param name="value">SI.</param>
    public bool Holds(double value)
    {
        var (own, limit) = (Measure.Printed(value, Digits), Measure.Printed(Limit, Digits));
        return IsLeast ? own >= limit : own <= limit;
    }

    /// <summary>In words: "rear/front frequency ratio at least 1.050".</summary>
    public string Words => $"{Measure.Name} {(IsLeast ? "at least" : "at most")} {Print(Limit)}";

    /// <summary>A number, or the limit, with its unit and as many digits as are compared.</summary>
    /// <param name="value">SI.</param>
    public string Print(double value)
    {
        var shown = Measure.Unit.Of(value);
        return $"{(Digits == Measure.Digits ? Measure.Print(shown) : Numeral.Of(shown, Digits))}{Measure.Unit.Suffix}";
    }

    // The measure's, or those that the limit was given with where they are more: "at most 0.36 °" is not "at most 0.4 °".
    private int Digits
    {
        get
        {
            var shown = Measure.Unit.Of(Limit);
            var digits = Measure.Digits;
            while (digits < Measure.Digits + MostFurther && Math.Abs(Measure.Printed(Limit, digits) - shown) > 1e-9 * Math.Max(1.0, Math.Abs(shown)))
            {
                digits++;
            }

            return digits;
        }
    }
}
