using System.Globalization;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Passes.Exact;

/// <summary>
/// The certified run: a piecewise straight car over a piecewise cubic road at constant speed, solved from kink to kink by Taylor series
/// (Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, I.8 and II.6) with the kinks located on the series. It uses
/// none of the stepped run's equations, so the two can check each other. At t = 0 the front wheel centres stand at x = 0; the rear ones
/// pass the same road wheelbase/speed later.
/// </summary>
internal sealed class ExactRun
{
    private ExactRun(double start, double outputStep, double[] samples, ExactStatistics statistics)
    {
        Start = start;
        OutputStep = outputStep;
        Samples = samples;
        Statistics = statistics;
    }

    /// <summary>Time of the first sample, s.</summary>
    public double Start { get; }

    /// <summary>Time between samples, s.</summary>
    public double OutputStep { get; }

    /// <summary><see cref="Channel.Count"/> numbers per sample, one sample after the other, as <see cref="Channel"/> lays them out.</summary>
    public double[] Samples { get; }

    /// <summary>What it took.</summary>
    public ExactStatistics Statistics { get; }

    /// <summary>One number of one sample.</summary>
    public double At(int sample, int channel) => Samples[(sample * Channel.Count) + channel];

    /// <summary>Runs a car under a load state, at rest at its trim until the road begins.</summary>
    /// <param name="model">The car.</param>
    /// <param name="road">The road, not yet averaged over the contact length.</param>
    /// <param name="speed">Speed, m/s, above 0.</param>
    /// <param name="start">Time of the first sample, s, while the car still stands on the road's first level: usually 0 or below.</param>
    /// <param name="outputStep">Time between samples, s, above 0.</param>
    /// <param name="outputs">Number of samples, at least 1.</param>
    /// <param name="order">Highest power of time in the series, 4 to 40.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <exception cref="RefusedValueException">
    /// An element of the car is curved, the road jumps under a damped tyre, or a number is out of range.
    /// </exception>
    /// <exception cref="RunFailedException">The run does not get on.</exception>
    public static ExactRun Of(
        RideModel model,
        Road road,
        double speed,
        double start,
        double outputStep,
        int outputs,
        int order = 14,
        CancellationToken cancellation = default) =>
        Of(model.Numbers, ExactRoad.From(RoadUnderWheels.Of(model, road)), speed, start, outputStep, outputs, order, cancellation);

    /// <summary>The same from a car's plain numbers and what each wheel rolls over.</summary>
    public static ExactRun Of(
        RideNumbers numbers,
        ExactRoad road,
        double speed,
        double start,
        double outputStep,
        int outputs,
        int order = 14,
        CancellationToken cancellation = default)
    {
        Checked.Positive(new Amount<Velocity>(speed), "Give the speed of the pass.", "Speed");
        Checked.Positive(new Amount<Time>(outputStep), "Give the time between samples.", "OutputStep");
        Checked.Within(outputs, 1, int.MaxValue / Channel.Count, "Give the number of samples.", "NumberOfSamples");
        Checked.Within(order, 4, 40, "14 is best for double precision.", "SeriesOrder");
        var delay = (numbers.X[0] - numbers.X[2]) / speed;
        RefuseCurved(numbers.Elements);
        RefuseJumps(numbers, road);
        RefuseLateStart(road, speed, start, delay);
        var tracks = road.Corners.Select((profile, i) => new ExactTrack(profile, speed, i < 2 ? 0.0 : delay)).ToArray();
        var solver = new ExactSolver(ExactCar.From(numbers), tracks, order);
        var samples = new double[outputs * Channel.Count];
        solver.Run(start, outputStep, outputs, samples, cancellation);
        return new ExactRun(start, outputStep, samples, solver.Statistics);
    }

    private static void RefuseCurved(ElementList elements)
    {
        if (!elements.IsPiecewiseStraight)
        {
            throw new RefusedValueException(
                "car for an exact run",
                $"curved in its {string.Join(", ", CurvedElements.Of(elements))}",
                "piecewise linear",
                "Take the stepped run, which is held against a general solver's passes of cars with each of these elements (docs/validation.md, "
                + "\"Whole passes\"), or give these elements as tables.");
        }
    }

    private static void RefuseJumps(RideNumbers numbers, ExactRoad road)
    {
        for (var i = 0; i < 4; i++)
        {
            if (road.Corners[i].HasJump && numbers.TyreDamping[i] > 0.0)
            {
                throw new RefusedValueException(
                    "road",
                    "a sharp step under a tyre with damping",
                    "without a jump in height",
                    "Give the step an edge length, or the tyre a contact length.");
            }
        }
    }

    private static void RefuseLateStart(ExactRoad road, double speed, double start, double delay)
    {
        for (var i = 0; i < 4; i++)
        {
            // To rounding: a pass that begins exactly at the first knot is in time.
            var begins = (road.Corners[i].Start / speed) + (i < 2 ? 0.0 : delay);
            if (!(start <= begins + 1e-9) && road.Corners[i].End > road.Corners[i].Start)
            {
                throw new RefusedValueException(
                    "start of the pass",
                    string.Create(CultureInfo.InvariantCulture, $"{start:G6} s"),
                    FormattableString.Invariant($"at most {begins:G6} s, when the road begins"),
                    "Start earlier: the car is at rest on a level road at first.");
            }
        }
    }
}
