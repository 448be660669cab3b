using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>The first stop that a car meets when it brakes or drives ever harder.</summary>
public sealed record StopContact
{
    /// <summary>Acceleration at which it is met, m/s², above zero: travel left over the travel per acceleration at rest.</summary>
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
            // A stop that is pressed at rest is in the slope already.
            var left = travel[i] > 0.0 ? model.Trim.BumpLeft[i] : model.Trim.ReboundLeft[i];
            var at = Gravity.Standard * left / Math.Abs(travel[i]);
            if (left > 0.0 && at <= Gravity.Standard && !(first?.Acceleration <= at))
            {
                var stop = travel[i] > 0.0 ? "bump stop" : "rebound stop";
                first = new StopContact { Acceleration = at, Stop = $"{CornerNames.Of((Cars.AxleEnd)(i / 2))} {stop}" };
            }
        }

        return first;
    }

    /// <summary>In a clause: "the front bump stop is met at 0.24 g".</summary>
    public override string ToString() => $"the {Stop} is met at {Numeral.Of(In.StandardGravities.Of(Acceleration), 2)} g";
}
