using System.Globalization;

namespace Heaveline.Passes.Exact;

/// <summary>
/// Runs a car from piece to piece: between two moments at which something bends (a kink of a law, lift-off or landing, a new piece of road) it is
/// exact but for the series' truncation and rounding. Starts at rest at trim.
/// </summary>
internal sealed class ExactSolver
{
    // Caps a step where the series sets no limit, as at rest, s.
    private const double LongestStep = 0.02;

    // More events than this within the window is a run that no longer gets on: 4 wheels bend at most a few dozen times at one moment.
    private const int EventsAtOnce = 1000;
    private const double Window = 1e-6;

    // Positions (m, rad) and rates (per s) beyond these are no car's: it has toppled and runs away.
    private const double FarthestPosition = 1e3;
    private const double FastestRate = 1e5;

    private readonly ExactCar car;
    private readonly ExactTrack[] tracks;
    private readonly ExactRegime regime;
    private readonly ExactSeries series;
    private readonly ExactEvents events;
    private readonly double[] road = new double[4 * ExactTrack.Order];
    private double windowStart = double.NegativeInfinity;
    private int eventsInWindow;
    private long pieces;
    private long found;
    private long evaluations;

    public ExactSolver(ExactCar car, ExactTrack[] tracks, int order)
    {
        this.car = car;
        this.tracks = tracks;
        regime = new ExactRegime(car);
        series = new ExactSeries(car, order);
        events = new ExactEvents(car, regime, series);
    }

    /// <summary>What it took so far.</summary>
    public ExactStatistics Statistics => new(pieces, found, evaluations);

    /// <summary>Runs and records <paramref name="outputs"/> samples.</summary>
    /// <param name="start">Time of the first sample, s.</param>
    /// <param name="outputStep">Time between samples, s.</param>
    /// <param name="outputs">Number of samples.</param>
    /// <param name="samples">Receives <see cref="Channel.Count"/> numbers for each.</param>
    /// <param name="cancellation">Stops the run.</param>
    public void Run(double start, double outputStep, int outputs, Span<double> samples, CancellationToken cancellation)
    {
        var t = start;
        var recorded = 0;
        while (recorded < outputs)
        {
            cancellation.ThrowIfCancellationRequested();
            var border = PlaceOnRoad(t);
            series.Expand(regime, road);
            evaluations++;

            // What the road's new piece or the last event has brought about at this very moment comes before the moment is looked at.
            if (events.First(0.0) == 0.0)
            {
                events.Apply(0.0);
                CountEvent(t);
                continue;
            }

            var output = start + (recorded * outputStep);
            if (t >= output)
            {
                Record(samples.Slice(recorded * Channel.Count, Channel.Count));
                recorded++;
                continue;
            }

            var until = Math.Min(output, border);
            var step = Math.Min(Math.Min(LongestStep, series.LongestStep()), until - t);
            var isWhole = step == until - t;
            var at = events.First(step);
            if (at <= step)
            {
                events.Apply(at);
                (step, isWhole) = (at, false);
                CountEvent(t);
            }

            series.Advance(step);
            pieces++;
            t = isWhole ? until : t + step;
            RefuseRunaway(t);
        }
    }

    // Returns when the next piece of road begins under any wheel.
    private double PlaceOnRoad(double t)
    {
        var border = double.PositiveInfinity;
        for (var i = 0; i < 4; i++)
        {
            tracks[i].MoveTo(t);
            tracks[i].Expand(t, road.AsSpan(ExactTrack.Order * i, ExactTrack.Order));
            border = Math.Min(border, tracks[i].NextBorder);
        }

        return border;
    }

    private void Record(Span<double> sample)
    {
        sample.Clear();
        for (var i = 0; i < car.Count; i++)
        {
            sample[i] = series.Position[0, i];
            sample[Channel.Rates + i] = series.Rate[0, i];
            sample[Channel.Accelerations + i] = series.Rate[1, i];
        }

        for (var i = 0; i < 4; i++)
        {
            sample[Channel.Tyre + i] = series.TyreNow(regime, i);
            sample[Channel.Force + i] = series.Suspension[Channel.Wheel + i];
        }
    }

    private void CountEvent(double t)
    {
        found++;
        if (t > windowStart + Window)
        {
            (windowStart, eventsInWindow) = (t, 0);
        }

        if (++eventsInWindow > EventsAtOnce)
        {
            throw new RunFailedException(
                string.Create(CultureInfo.InvariantCulture, $"The exact run does not get on at {t:G9} s: the {events.Name} changes to and fro."),
                "Smooth the element named, or take the stepped run.");
        }
    }

    private void RefuseRunaway(double t)
    {
        for (var i = 0; i < car.Count; i++)
        {
            if (!(Math.Abs(series.Position[0, i]) <= FarthestPosition && Math.Abs(series.Rate[0, i]) <= FastestRate))
            {
                throw new RunFailedException(
                    FormattableString.Invariant($"The car runs away at {t:G9} s."),
                    "It is unstable there: check its damping and its stiffness in pitch and roll.");
            }
        }
    }
}
