using MathNet.Numerics.Distributions;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>
/// Passes in time, with every nonlinearity, over several random roads of one spectrum, to stand beside a <see cref="RandomResponse"/>. A finite road
/// shows its spectrum only as well as chance allows: each number has an interval from the scatter between the roads (Student's t).
/// </summary>
/// <remarks>
/// Independent roads, not parts of a long one: a drawn road has one wave per 1/2048 cycles/m, so that past 2 km it tells nothing new, and the scatter
/// between its parts would promise too much (measured on 10 roads of 4 km: 1.3 to 1.8 times the scatter that their parts show).
/// </remarks>
public sealed class RandomPass
{
    // Far apart, so that neighbouring seeds share no road.
    private const ulong NextRoad = 0xD1342543DE82EF95UL;

    private readonly double from;

    private RandomPass(IReadOnlyList<Pass> passes, TrackCoherence tracks, double from) => (Passes, Tracks, this.from) = (passes, tracks, from);

    /// <summary>One pass per road.</summary>
    public IReadOnlyList<Pass> Passes { get; }

    /// <summary>Speed, m/s.</summary>
    public double Speed => Passes[0].Speed;

    /// <summary>
    /// How the two tracks of the roads go together: give it to <see cref="RandomOptions.Tracks"/> for the same roads in the frequency domain.
    /// </summary>
    public TrackCoherence Tracks { get; }

    /// <summary>A car over random roads, both axles in the same two tracks, a mean track apart (one track for a two-wheeler).</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="spectrum">The roads' spectrum.</param>
    /// <param name="speed">Speed, m/s. 0.5 to 120.</param>
    /// <param name="options">How to run it.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">Speed out of range, or more road than can be drawn.</exception>
    /// <exception cref="RunFailedException">A pass left the model's range.</exception>
    public static RandomPass Of(
        RideModel model, RoadSpectrum spectrum, double speed, RandomPassOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(spectrum);
        options ??= RandomPassOptions.Default;
        _ = DrivingSpeed.Checked(speed);
        var time = options.LeadTime + options.Duration;
        var track = model.Rolls ? 0.5 * (model.Car.Front.Track.Si + model.Car.Rear.Track.Si) : 0.0;
        Road Draw(int k)
        {
            cancellation.ThrowIfCancellationRequested();
            return Road.From(
                new RandomRoad
                {
                    Spectrum = spectrum,
                    Track = new(track),
                    Length = new((speed * time) + 1.0),
                    LeadIn = new(Math.Min(1000.0, 0.5 * options.LeadTime * speed)),
                    Spacing = new(Math.Min(0.05, 0.125 / spectrum.Band.High)),
                    Seed = unchecked(options.Seed + ((ulong)k * NextRoad)),
                },
                cancellation);
        }

        var passes = PassBatch.Of(
            [.. Enumerable.Range(0, options.Roads).Select(k => new PassRequest(model, Draw(k), speed))],
            new() { Method = FixedStep.Once, Record = new() { Duration = time, SamplesPerSecond = options.SamplesPerSecond } },
            cancellation);
        if (passes.FirstOrDefault(p => p.Outcome != PassOutcome.Completed) is { } broken)
        {
            throw new RunFailedException(
                broken.OutcomeSentence, "The random road is too rough for the car's model at this speed: take a smoother one or a lower speed.");
        }

        return new RandomPass(passes, new TrackCoherence { Track = new(track), Waviness = spectrum.Waviness }, options.LeadTime);
    }

    /// <summary>A signal of the evaluated time of all roads.</summary>
    /// <param name="signal">The signal, of this car.</param>
    /// <param name="confidence">Probability of the interval, above 0 and below 1. Default 0.95.</param>
    public RandomReading Of(RideSignal signal, double confidence = 0.95)
    {
        _ = Checked.Within(confidence, double.Epsilon, Math.BitDecrement(1.0), "Give a probability such as 0.95.");
        double[][] roads = [.. Passes.Select(p => p.Trace(signal).AsSpan()[p.Time.Count(t => t < from)..].ToArray())];
        var mean = roads.Average(r => r.Average());
        double[] squares = [.. roads.Select(r => r.Average(v => (v - mean) * (v - mean)))];
        var square = squares.Average();
        var scatter = Math.Sqrt(squares.Sum(s => (s - square) * (s - square)) / (squares.Length * (squares.Length - 1.0)));
        var reach = scatter * StudentT.InvCDF(0.0, 1.0, squares.Length - 1.0, 0.5 + (0.5 * confidence));
        return new RandomReading(signal, mean, Math.Sqrt(square), Math.Sqrt(Math.Max(0.0, square - reach)), Math.Sqrt(square + reach), confidence);
    }
}
