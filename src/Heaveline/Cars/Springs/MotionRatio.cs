using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// How far a spring or damper moves when the wheel moves: r = d(element travel)/d(wheel travel), as a polynomial in the wheel travel S from the
/// reference state, r(S) = r₀ + r₁·S + r₂·S². The element's own travel is its integral.
/// </summary>
public sealed record MotionRatio
{
    /// <summary>The element moves as the wheel does.</summary>
    public static MotionRatio One { get; } = Constant(1.0);

    /// <summary>r₀ at the reference state (–). Above 0, at most 2.</summary>
    public required Amount<Plain> AtReference
    {
        get;
        init => field = value.Si is > 0.0 and <= 2.0
            ? value
            : throw new RefusedValueException(
                "motion ratio",
                value.WithDoubt(0.0).ToString(),
                "above 0 and at most 2",
                "It is element travel divided by wheel travel: measure both over the same movement.")
            {
                Property = nameof(MotionRatio),
                Least = 0.0,
                Most = 2.0,
                IsOpenBelow = true,
            };
    }

    /// <summary>r₁, change per metre of bump travel, 1/m.</summary>
    public Amount<RatioPerLength> PerTravel
    {
        get;
        init => field = Checked.Within(value, -20.0, 20.0, "A change of 0.1 over 100 mm is 1 per metre.");
    } = new(0.0);

    /// <summary>r₂, 1/m². From a measured sweep.</summary>
    public double PerTravelSquared { get; init => field = Checked.Within(value, -200.0, 200.0); }

    /// <summary>Wheel travel at the lower end of the sweep that it was measured by, from the reference state; null without one.</summary>
    public Amount<Length>? SweptFrom { get; init; }

    /// <summary>Wheel travel at the upper end of that sweep.</summary>
    public Amount<Length>? SweptTo { get; init; }

    /// <summary>Whether the ratio changes with travel.</summary>
    public bool Varies => PerTravel.Si != 0.0 || PerTravelSquared != 0.0;

    /// <summary>A ratio that does not change.</summary>
    public static MotionRatio Constant(double ratio) => new() { AtReference = new Amount<Plain>(ratio) };

    /// <summary>From two travels measured over one movement of the wheel. Their doubts combine as independent errors.</summary>
    public static MotionRatio FromTravels(Amount<Length> element, Amount<Length> wheel)
    {
        Checked.Positive(element, "Give how far the spring or damper moved.", "ElementTravel");
        Checked.Positive(wheel, "Give how far the wheel moved.", "WheelTravel");
        var ratio = element.Si / wheel.Si;
        var doubt = ratio * Math.Sqrt(Square(element.Doubt.HalfWidth / element.Si) + Square(wheel.Doubt.HalfWidth / wheel.Si));
        return new MotionRatio { AtReference = new Amount<Plain>(ratio, new Doubt(doubt)) };
    }

    /// <summary>
    /// From a sweep: element travel against wheel travel, both from the reference state and signed the same way, at least three points with the wheel
    /// moving. The element travel is fitted by x(S) = r₀S + r₁S²/2 + r₂S³/3 (r₂ only with five points or more), least squares, the coefficients with
    /// their Student intervals when there are more points than coefficients.
    /// </summary>
    public static MotionRatio FromSweep(IReadOnlyList<double> wheel, IReadOnlyList<double> element)
    {
        if (wheel.Count != element.Count || wheel.Count < 3)
        {
            throw new RefusedValueException(
                "the number of pairs of travels",
                $"{Math.Min(wheel.Count, element.Count)}",
                "three or more",
                "Measure element and wheel travel at three heights or more.");
        }

        var fit = SweepFit(wheel, element);
        var terms = fit.Coefficients.Length;
        double[] Only(int term) => [.. Enumerable.Range(0, terms).Select(k => k == term ? 1.0 : 0.0)];
        return new MotionRatio
        {
            AtReference = new Amount<Plain>(WithoutRounding(fit.Coefficients[0]), new Doubt(fit.HalfWidth(Only(0)))),
            PerTravel = new Amount<RatioPerLength>(fit.Coefficients[1], new Doubt(fit.HalfWidth(Only(1)))),
            PerTravelSquared = terms == 3 ? fit.Coefficients[2] : 0.0,
            SweptFrom = new Amount<Length>(wheel.Min()),
            SweptTo = new Amount<Length>(wheel.Max()),
        };
    }

    /// <summary>r(S) (–).</summary>
    public double At(double wheelTravel) => AtReference.Si + (wheelTravel * (PerTravel.Si + (wheelTravel * PerTravelSquared)));

    /// <summary>Element travel x(S), m.</summary>
    public double Travel(double wheelTravel) =>
        wheelTravel * (AtReference.Si + (wheelTravel * ((PerTravel.Si / 2.0) + (wheelTravel * PerTravelSquared / 3.0))));

    /// <summary>The fit of a sweep of three pairs or more: r₀, r₁ and, with five pairs or more, r₂, whatever a ratio may be.</summary>
    internal static LeastSquares SweepFit(IReadOnlyList<double> wheel, IReadOnlyList<double> element)
    {
        var terms = wheel.Count >= 5 ? 3 : 2;
        return new LeastSquares([.. wheel.Select(s => Enumerable.Range(1, terms).Select(p => Math.Pow(s, p) / p).ToArray())], element);
    }

    // A ratio of 2 exactly stays inside the limit when the fit's last bit says more.
    private static double WithoutRounding(double ratio) => Math.Abs(ratio - 2.0) < 1e-12 ? 2.0 : ratio;

    private static double Square(double x) => x * x;
}
