using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>The first stop that a car meets when it brakes or drives ever harder.</summary>
public sealed record StopContact
{
    // Less travel at one g is the rounding of a wheel that stays where it is, m.
    private const double Still = 1e-9;

    /// <summary>Acceleration at which it is met, m/s²: travel left over the travel per acceleration at rest; 0 where it is pressed.</summary>
    public required double Acceleration { get; init; }

    /// <summary>The wheel or axle and its stop in words: "front bump stop".</summary>
    public required string Stop { get; init; }

    /// <summary>The first stop on the way to one g; null where none is.</summary>
    /// <param name="model">The car at its trim.</param>
    /// <param name="travel">Travel of the four wheels at one g, m, bump positive.</param>
    internal static StopContact? Of(RideModel model, IReadOnlyList<double> travel)
    {
        StopContact? first = null;
        for (var i = 0; i < 4; i++)
        {
            if (!(Math.Abs(travel[i]) > Still))
            {
                continue;
            }

            // A stop that is pressed at rest is met already: to stand just clear of it is no less than that.
            var left = Math.Max(0.0, travel[i] > 0.0 ? model.Trim.BumpLeft[i] : model.Trim.ReboundLeft[i]);
            var at = Gravity.Standard * left / Math.Abs(travel[i]);
            if (at <= Gravity.Standard && !(first?.Acceleration <= at))
            {
                var stop = travel[i] > 0.0 ? "bump stop" : "rebound stop";
                first = new StopContact { Acceleration = at, Stop = $"{CornerNames.Of((Cars.AxleEnd)(i / 2))} {stop}" };
            }
        }

        return first;
    }

    /// <summary>In a clause: "the front bump stop is met at 0.24 g", "the rear bump stop is pressed at rest and met at 0.00 g".</summary>
    public override string ToString() =>
        $"the {Stop} is {(Acceleration > 0.0 ? "" : "pressed at rest and ")}met at {Numeral.Of(In.StandardGravities.Of(Acceleration), 2)} g";
}
