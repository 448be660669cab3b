using Heaveline.Elements;
using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>How much one pass may ask of a machine. What would take more is refused before it begins.</summary>
internal static class PassLimit
{
    /// <summary>Most recorded samples of a pass: 1.1 GB, 2 h 46 min of the usual record.</summary>
    public const int MostSamples = 4_000_000;

    /// <summary>Most steps of a pass.</summary>
    public const int MostSteps = 50_000_000;

    /// <exception cref="RefusedValueException">Too much to record, or too many steps.</exception>
    public static void Check(PassRequest request, PassRecord record, double samples, double stepsPerSample, double longest)
    {
        if (!(samples <= MostSamples))
        {
            var (model, road, speed) = request;
            var length = Math.Max(road.End, road.EventEnd ?? 0.0) - Math.Min(0.0, road.Start);
            throw new RefusedValueException(
                "number of samples of the pass",
                FormattableString.Invariant($"{samples:G3}, {record.SamplesPerSecond:0.#} a second")
                + (record.Duration is null
                    ? FormattableString.Invariant($" over {length:G6} m of road and {model.Car.Wheelbase.Si:G6} m of wheelbase at ")
                    + FormattableString.Invariant($"{In.KilometresPerHour.Of(speed):0.#} km/h")
                    : ""),
                FormattableString.Invariant($"at most {MostSamples:0}"),
                "Take a shorter road or a higher speed, and check the units of both.");
        }

        if (!(samples * stepsPerSample <= MostSteps))
        {
            var forced = StepLimit.Of(request.Model);
            throw new RefusedValueException(
                "number of steps of the pass",
                FormattableString.Invariant($"{samples * stepsPerSample:0}, each of {In.Microseconds.Of(longest):G3} µs, which ")
                + $"{forced.Words} forces",
                FormattableString.Invariant($"at most {MostSteps:0}"),
                forced.Cause == StepCause.None
                    ? "Take a shorter road or a higher speed."
                    : $"Check the values of {forced.Words} and their units: road vehicles take steps of 100 µs and above.");
        }
    }

    /// <summary>How many passes of a length may stand side by side, so that together they record no more than one may.</summary>
    /// <param name="samples">Samples of the longest.</param>
    /// <param name="width">As many as there are lanes.</param>
    public static int Width(int samples, int width)
    {
        while (width > 1 && (long)samples * width > MostSamples)
        {
            width /= 2;
        }

        return width;
    }

    /// <summary>The lanes for a group: all of them, or, where the record is long, no more than it has passes.</summary>
    public static int Width(PassGroup group, PassTiming timing, int width)
    {
        while (width > 1 && width >= 2 * group.Requests.Length && (long)timing.Samples * width > MostSamples)
        {
            width /= 2;
        }

        return width;
    }
}
