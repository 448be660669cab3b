using Heaveline.Models;

namespace Heaveline.Passes;

/// <summary>How far a run is off, from the same run with another step (<see cref="PassTiming.Compared"/>).</summary>
/// <remarks>
/// Corners in the force laws make the error fall with the square of the step, so a third of the difference to twice the step is what is left, and
/// four thirds of that to half the step. Where the force itself
/// jumps it falls with the step only, and the whole difference is left: a damped tyre without contact length at a road's corner, or one that lands.
/// At a sharp step under an undamped tyre the error falls with the square too (<see cref="RoadJump{TLane}"/>), but with a factor that hangs on where
/// between two steps the jump lies: there twice the largest difference to a run with twice and to one with half the step bounds it; four times that
/// to runs with a half and a quarter.
/// The law of the square is one of means: single passes miss it by up to 5.6 times (276 varied ones measured, 27 % above it). What is stated is three
/// times that, which left 2 of the 276: a bound 19 times out of 20 and more, own choice.
/// </remarks>
internal static class PassError
{
    private const double Safety = 3.0;

    /// <summary>
    /// What a pass in single precision states for its rounding beside the error of its steps, of the peak of pitch: measured up to 6.2e-5, over 213
    /// passes of demo cars and cars drawn at random.
    /// </summary>
    public const double PitchInSingle = 1e-4;

    /// <summary>The same of the peak of tyre load: measured up to 1.0e-4.</summary>
    public const double TyreLoadInSingle = 2e-4;

    /// <summary>What the error lies below, over the run's own peak, for pitch and tyre load; null when the longer step did not hold.</summary>
    /// <param name="model">The car.</param>
    /// <param name="road">The road.</param>
    /// <param name="againstHalf">Whether it is compared with half its step, not with twice.</param>
    /// <param name="run">The run.</param>
    /// <param name="others">Those with the clocks of <see cref="PassTiming.Compared"/>.</param>
    public static (double? Pitch, double? Tyre) Of(
        RideModel model, RoadUnderWheels road, bool againstHalf, double[] run, IReadOnlyList<double[]> others) =>
        road.HasJump
            ? (Largest(againstHalf, run, others, Channel.Pitch, 1), Largest(againstHalf, run, others, Channel.Tyre, 4))
            : Of(model.Numbers, [.. model.Car.Axles.Select(axle => axle.Tyre.ContactLength.Si == 0.0)], againstHalf, run, others[0]);

    /// <summary>The same from a car's plain numbers.</summary>
    /// <param name="numbers">The car.</param>
    /// <param name="onPoints">Per axle, whether its tyres touch the road in a point.</param>
    /// <param name="againstHalf">Whether it is compared with half its step, not with twice.</param>
    /// <param name="run">The run.</param>
    /// <param name="other">The run with twice the step, or half.</param>
    public static (double? Pitch, double? Tyre) Of(
        RideNumbers numbers, ReadOnlySpan<bool> onPoints, bool againstHalf, double[] run, double[] other)
    {
        // Of a difference to half the step the error is four thirds, or twice where it falls with the step alone.
        var (twice, half) = ForceJumps(numbers, onPoints, run) ? (1.0, 2.0) : (1.0 / 3.0, 4.0 / 3.0);
        var share = Safety * (againstHalf ? half : twice);
        return (share * Relative(run, other, Channel.Pitch, 1), share * Relative(run, other, Channel.Tyre, 4));
    }

    private static bool ForceJumps(RideNumbers numbers, ReadOnlySpan<bool> onPoints, double[] run)
    {
        for (var i = 0; i < 4; i++)
        {
            if (numbers.TyreDamping[i] > 0.0)
            {
                if (onPoints[i / 2])
                {
                    return true;
                }

                for (var at = Channel.Tyre + i; at < run.Length; at += Channel.Count)
                {
                    if (run[at] <= -numbers.TrimLoad[i])
                    {
                        return true;
                    }
                }
            }
        }

        return false;
    }

    private static double? Largest(bool againstHalf, double[] run, IReadOnlyList<double[]> others, int channel, int count)
    {
        double?[] differences = [.. others.Select(other => Relative(run, other, channel, count))];
        return differences.Any(difference => difference is null) ? null : (againstHalf ? 4.0 : 2.0) * differences.Max();
    }

    private static double? Relative(double[] run, double[] coarse, int channel, int count)
    {
        double difference = 0.0, peak = 0.0;
        for (var at = channel; at < run.Length; at += Channel.Count)
        {
            for (var i = at; i < at + count; i++)
            {
                difference = Math.Max(difference, Math.Abs(run[i] - coarse[i]));
                peak = Math.Max(peak, Math.Abs(run[i]));
                if (!double.IsFinite(coarse[i]))
                {
                    return null;
                }
            }
        }

        return peak > 0.0 ? difference / peak : 0.0;
    }
}
