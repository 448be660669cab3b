using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;
using MathNet.Numerics.Distributions;

namespace Heaveline.Responses;

/// <summary>
/// A pass in time, with every nonlinearity, over one random road, to stand beside a <see cref="RandomResponse"/>. A finite road shows its spectrum only as
/// well as chance allows: each number has an interval from the scatter between equal parts of the record (batch means [Bendat and Piersol, Random Data]).
/// </summary>
public sealed class RandomPass
{
    private readonly int first;
    private readonly int batches;

    private RandomPass(Pass pass, RandomRoad road, RandomPassOptions options)
    {
        (Pass, Road, batches) = (pass, road, options.Batches);
        first = Array.FindIndex(pass.Time, t => t >= options.LeadTime);
        if (first < 0 || pass.Count - first < 10 * batches)
        {
            throw new RunFailedException($"The pass ended too early to be evaluated: {pass.OutcomeSentence}", "Take a smoother road or a lower speed.");
        }

        Tracks = new TrackCoherence { Track = road.Track, Waviness = road.Spectrum.Waviness };
    }

    /// <summary>The pass.</summary>
    public Pass Pass { get; }

    /// <summary>Its road.</summary>
    public RandomRoad Road { get; }

    /// <summary>How its two tracks go together: give it to <see cref="RandomOptions.Tracks"/> for the same road in the frequency domain.</summary>
    public TrackCoherence Tracks { get; }

    /// <summary>A car over one random road, both axles in the same two tracks, a mean track apart (one track for a two-wheeler).</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="spectrum">The road's spectrum.</param>
    /// <param name="speed">Speed, m/s. 0.5 to 120.</param>
    /// <param name="options">How to run it.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">Speed out of range, or more road than can be drawn.</exception>
    /// <exception cref="RunFailedException">The pass left the model's range before it could be evaluated.</exception>
    public static RandomPass Of(RideModel model, RoadSpectrum spectrum, double speed, RandomPassOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        options ??= RandomPassOptions.Default;
        Responses.Pass.RefuseSpeed(speed);
        var time = options.LeadTime + options.Duration;
        var road = new RandomRoad
        {
            Spectrum = spectrum,
            Track = new(model.Rolls ? 0.5 * (model.Car.Front.Track.Si + model.Car.Rear.Track.Si) : 0.0),
            Length = new((speed * time) + 1.0),
            LeadIn = new(Math.Min(1000.0, 0.5 * options.LeadTime * speed)),
            Spacing = new(Math.Min(0.05, 0.125 / spectrum.Band.High)),
            Seed = options.Seed,
        };
        var pass = Responses.Pass.Of(
            model, Roads.Road.From(road), speed, PassOptions.Default with { Duration = time, StatesError = false, SamplesPerSecond = options.SamplesPerSecond }, cancellation);
        return new RandomPass(pass, road, options);
    }

    /// <summary>A signal of the evaluated time.</summary>
    /// <param name="signal">The signal, of this car.</param>
    /// <param name="confidence">Probability of the interval, above 0 and below 1. Default 0.95.</param>
    public RandomReading Of(RideSignal signal, double confidence = 0.95)
    {
        _ = Checked.Within(confidence, double.Epsilon, Math.BitDecrement(1.0), "Give a probability such as 0.95.");
        var values = Pass.Trace(signal).AsSpan(first);
        var mean = 0.0;
        foreach (var value in values)
        {
            mean += value / values.Length;
        }

        var each = values.Length / batches;
        var squares = new double[batches];
        for (var k = 0; k < each * batches; k++)
        {
            squares[k / each] += (values[k] - mean) * (values[k] - mean) / each;
        }

        var square = squares.Average();
        var scatter = Math.Sqrt(squares.Sum(s => (s - square) * (s - square)) / (batches * (batches - 1.0)));
        var reach = scatter * StudentT.InvCDF(0.0, 1.0, batches - 1.0, 0.5 + (0.5 * confidence));
        return new RandomReading(signal, mean, Math.Sqrt(square), Math.Sqrt(Math.Max(0.0, square - reach)), Math.Sqrt(square + reach), confidence);
    }
}
