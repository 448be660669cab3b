using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Drives.Events;

/// <summary>Where the phone lay in the car.</summary>
public sealed record PhonePlace
{
    /// <summary>A phone lies no farther from front axle, middle or floor, m, and its place is no less sure.</summary>
    public const double Farthest = 20.0;

    // Of a place that nobody states, m: 0.4 m is one standard deviation. Common practice, no source.
    private const double UnknownSpread = 0.66;

    // Of a place whose doubt nobody states, m. Common practice, no source.
    private const double UsualSpread = 0.05;

    /// <summary>Where phones lie behind the front axle, m; outside it is told, not refused. Common practice, no source, as the two below.</summary>
    public static (double Low, double High) UsualBehind => (-1.5, 6.0);

    /// <summary>Likewise left of the car's middle, m.</summary>
    public static (double Low, double High) UsualLeft => (-1.2, 1.2);

    /// <summary>Likewise above the floor, m.</summary>
    public static (double Low, double High) UsualUp => (0.0, 1.5);

    /// <summary>Behind the front axle, m.</summary>
    public required double BehindFrontAxle
    {
        get;
        init => field = Checked.Within(value, -Farthest, Farthest, "Give the phone's place behind the front axle.");
    }

    /// <summary>Half-width of that (90 %), m.</summary>
    public double BehindFrontAxleSpread
    {
        get;
        init => field = Checked.Within(value, 0.0, Farthest, "Give how well the phone's place is known.");
    }

    = UsualSpread;

    /// <summary>Left of the car's middle, m.</summary>
    public double Left { get; init => field = Checked.Within(value, -Farthest, Farthest, "Give the phone's place left of the middle."); }

    /// <summary>Above the floor, m.</summary>
    public double Up { get; init => field = Checked.Within(value, -Farthest, Farthest, "Give the phone's height above the floor."); }

    /// <summary>Why a distance is that of no phone in a car, with its end of a sentence; null where it may be one.</summary>
    /// <param name="distance">From front axle, middle or floor.</param>
    public static string? Refusal(Amount<Length> distance) =>
        !(Math.Abs(distance.Si) <= Farthest) ? FormattableString.Invariant($"that is no place in a car; give distances of {Farthest} m or less.")
        : !(distance.Doubt.HalfWidth <= Farthest) ? FormattableString.Invariant($"its doubt, ± {distance.Doubt.HalfWidth:0.###} m, says of no place ")
            + FormattableString.Invariant($"in a car; give one of {Farthest} m or less.")
        : null;

    /// <summary>Where it is taken to have lain where nobody says: in the middle between the axles, as well as that is known.</summary>
    /// <param name="wheelbase">m.</param>
    public static PhonePlace Unknown(double wheelbase) => new() { BehindFrontAxle = 0.5 * wheelbase, BehindFrontAxleSpread = UnknownSpread };

    /// <summary>A place as it was measured: a stated doubt holds 19 times out of 20, <see cref="BehindFrontAxleSpread"/> 9 out of 10.</summary>
    /// <param name="behindFrontAxle">Behind the front axle; without a doubt good to 5 cm (90 %).</param>
    /// <param name="left">Left of the car's middle, m.</param>
    /// <param name="up">Above the floor, m.</param>
    /// <exception cref="RefusedValueException">It is no place in a car.</exception>
    public static PhonePlace From(Amount<Length> behindFrontAxle, double left, double up) => new()
    {
        BehindFrontAxle = behindFrontAxle.Si,
        BehindFrontAxleSpread = behindFrontAxle.Doubt.IsStated ? Gaussian.Ninety * behindFrontAxle.Doubt.StandardDeviation : UsualSpread,
        Left = left,
        Up = up,
    };
}
