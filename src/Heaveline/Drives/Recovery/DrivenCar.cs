using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// The motion of a car along a road at a changing speed, computed with every nonlinearity of the model. The push of braking, power and bends on the
/// body is left out: it neither dives nor leans, so that what it does is of the road alone.
/// </summary>
public sealed class DrivenCar
{
    // Samples a second of the record: a wheel's hop in 30 samples and more.
    private const double SamplesPerSecond = 400.0;

    private readonly ReadOnlyMemory<double> samples;

    private DrivenCar(RideModel model, DriveLine line, ReadOnlyMemory<double> samples) => (Model, Line, this.samples) = (model, line, samples);

    /// <summary>Car and load.</summary>
    public RideModel Model { get; }

    /// <summary>How it is driven; at a constant speed, a pass.</summary>
    public DriveLine Line { get; }

    /// <summary>Time between samples, s; the first is at 0 s.</summary>
    public double SampleStep => 1.0 / SamplesPerSecond;

    /// <summary>Number of samples.</summary>
    public int Count => samples.Length / Channel.Count;

    /// <summary>The car driven along a road.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="road">The road; the front wheel centres stand at x = 0 at 0 s, where it must be level.</param>
    /// <param name="line">How it is driven.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">A sharp step; too much to record; the car left the range of its model.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DrivenCar Of(RideModel model, Road road, DriveLine line, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(line);
        var wheels = RoadUnderWheels.Of(model, road).At(line.Speeds);
        var step = 1.0 / SamplesPerSecond;
        var count = (int)Math.Floor(line.Length * SamplesPerSecond) + 1;
        var longest = StepChoice.Of(model, FixedStep.Once.LargestStep);
        var steps = (int)Math.Ceiling(step / longest.Step);
        var mean = Math.Max(line.Distance(line.Length) / line.Length, DrivingSpeed.Slowest);
        PassLimit.Check(new PassRequest(model, road, mean), new PassRecord { SamplesPerSecond = SamplesPerSecond }, count, steps, longest.Step);
        var timing = new PassTiming(0.0, step, count, steps);
        var samples = PassRun.Of(model, wheels, mean, timing, stop);
        var (_, good, sentence) = PassRange.Of(model, samples, timing);
        return good == count
            ? new DrivenCar(model, line, samples)
            : throw new RefusedValueException("planted drive", sentence, "inside the range of the model", "Drive slower, or over a smoother road.");
    }

    /// <summary>A signal at every sample, from trim.</summary>
    /// <param name="signal">The signal, of this car.</param>
    public ImmutableArray<double> Trace(RideSignal signal)
    {
        ArgumentNullException.ThrowIfNull(signal);
        var values = new double[Count];
        signal.FromTrim.Read(samples.Span, Channel.Count, values);
        return ImmutableCollectionsMarshal.AsImmutableArray(values);
    }
}
