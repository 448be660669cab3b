using System.Runtime.CompilerServices;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>
/// What a year takes from a car, each year alike: a guess or what two measurings years apart say, with its doubt. Lengths are told at the wheel, as
/// how much lower an end comes to stand by them.
/// </summary>
public sealed record YearlyWear
{
    private const string Lower = "Measure the height over the wheel twice, years apart; 0 where it does not sink.";

    /// <summary>How much lower the front comes to stand a year by its springs, m, 0 to 0.05.</summary>
    public Amount<Length> FrontSag { get; init => field = Loss(value, 0.05, Lower); }

    /// <summary>How much lower the rear comes to stand a year by its springs, m, 0 to 0.05.</summary>
    public Amount<Length> RearSag { get; init => field = Loss(value, 0.05, Lower); }

    /// <summary>How much lower both ends come to stand a year by rubber bushes that are twisted as the car stands and creep, m, 0 to 0.05.</summary>
    public Amount<Length> BushCreep { get; init => field = Loss(value, 0.05, Lower); }

    /// <summary>Share of what is left that every damper force loses a year (–), 0 to 0.5.</summary>
    public Amount<Plain> DamperLoss { get; init => field = Loss(value, 0.5, "3 % is 0.03; 0 where the dampers keep their force."); }

    /// <summary>Whether anything is lost at all.</summary>
    public bool IsAny => FrontSag.Si > 0.0 || RearSag.Si > 0.0 || BushCreep.Si > 0.0 || DamperLoss.Si > 0.0;

    /// <summary>The rates with errors in them; one that would fall below 0 is 0, since nothing grows with the years.</summary>
    /// <param name="errors">Errors in standard deviations, shape (4), in the order in which they stand here.</param>
    internal YearlyWear With(IReadOnlyList<double> errors) => new()
    {
        FrontSag = Drawn(FrontSag, errors[0]),
        RearSag = Drawn(RearSag, errors[1]),
        BushCreep = Drawn(BushCreep, errors[2]),
        DamperLoss = Drawn(DamperLoss, errors[3]),
    };

    // A doubt beyond the rate would let a part of the cars grow with the years; cut off at nothing, it would make another rate of the one given.
    private static Amount<TDimension> Loss<TDimension>(Amount<TDimension> rate, double most, string advice, [CallerMemberName] string what = "")
        where TDimension : struct, IDimension => Checked.Within(rate, 0.0, most, advice, what) is var loss && loss.Doubt.HalfWidth <= loss.Si
        ? loss
        : throw new RefusedValueException(
            what,
            rate.ToString(),
            "given with a doubt no larger than itself",
            "Measure further apart, or give half of the most that it may be, ± as much.")
        {
            Property = what,
        };

    private static Amount<TDimension> Drawn<TDimension>(Amount<TDimension> rate, double error)
        where TDimension : struct, IDimension =>
        new(Math.Clamp(rate.Si + (rate.Doubt.StandardDeviation * error), 0.0, typeof(TDimension) == typeof(Length) ? 0.05 : 0.5));
}
