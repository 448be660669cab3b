using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>
/// One crossing of a road by a car at a constant speed, computed with every nonlinearity of the model. t = 0 when the front wheel centres stand at
/// x = 0. All traces have one value per sample; angles nose-down and right-side-down positive, travel bump positive from the reference state.
/// </summary>
/// <remarks>
/// A trace is read off the record when it is first asked for, and kept: whoever asks again, on whatever thread, gets the same storage.
/// </remarks>
public sealed class Pass
{
    private readonly ReadOnlyMemory<double> samples;
    private readonly Dictionary<SampleReading, ImmutableArray<double>> traces = [];
    private readonly Lock reading = new();

    internal Pass(PassRequest request, PassTiming timing, ReadOnlyMemory<double> samples, PassStatistics statistics)
    {
        var (outcome, good, sentence) = PassRange.Of(request.Model, samples.Span, timing);
        Request = request;
        Outcome = outcome;
        OutcomeSentence = sentence;
        Statistics = statistics;
        Start = timing.Start;
        SampleStep = timing.SampleStep;
        Count = good;
        this.samples = samples;
        RearLeaves = request.RearLeaves;
    }

    /// <summary>The car and its load.</summary>
    public RideModel Model => Request.Model;

    /// <summary>The road.</summary>
    public Road Road => Request.Road;

    /// <summary>Speed, m/s.</summary>
    public double Speed => Request.Speed;

    /// <summary>How it ended.</summary>
    public PassOutcome Outcome { get; }

    /// <summary>What happened when it did not run to its end: place, value, limit, advice. Empty when it did.</summary>
    public string OutcomeSentence { get; }

    /// <summary>How it was computed and how far it may be off.</summary>
    public PassStatistics Statistics { get; }

    /// <summary>Number of good samples.</summary>
    public int Count { get; }

    /// <summary>Time of the first sample, s.</summary>
    public double Start { get; }

    /// <summary>Time between samples, s.</summary>
    public double SampleStep { get; }

    /// <summary>Time of each sample, s.</summary>
    public ImmutableArray<double> Time
    {
        get
        {
            lock (reading)
            {
                return field.IsDefault ? field = [.. Enumerable.Range(0, Count).Select(k => Start + (k * SampleStep))] : field;
            }
        }
    }

    /// <summary>When the rear wheel centres leave the obstacle (or the road's end), s: from here on the car settles.</summary>
    public double RearLeaves { get; }

    /// <summary>What was asked for.</summary>
    internal PassRequest Request { get; }

    /// <summary>The road in words, as this vehicle meets it.</summary>
    internal string RoadCaption => Road.CaptionFor(Model.Rolls);

    /// <summary>Rate of the flow through the line of a side, m³/s, from the front to the rear; 0 without a fluid line.</summary>
    /// <param name="side">0 left, 1 right.</param>
    internal ImmutableArray<double> FlowRate(int side) => Read(SampleReading.Of((Channel.Rates + Channel.Flow + side, 1.0)));

    /// <summary>Heave of the loaded centre of gravity from trim, m, up positive.</summary>
    public ImmutableArray<double> Heave => Trace(RideSignal.Heave);

    /// <summary>Pitch from trim, rad, nose-down positive.</summary>
    public ImmutableArray<double> Pitch => Trace(RideSignal.Pitch);

    /// <summary>Roll from trim, rad, right-side-down positive.</summary>
    public ImmutableArray<double> Roll => Trace(RideSignal.Roll);

    /// <summary>Pitch rate, rad/s.</summary>
    public ImmutableArray<double> PitchRate => Trace(RideSignal.PitchRate);

    /// <summary>Heave acceleration, m/s².</summary>
    public ImmutableArray<double> HeaveAcceleration => Trace(RideSignal.HeaveAcceleration);

    /// <summary>Pitch acceleration, rad/s².</summary>
    public ImmutableArray<double> PitchAcceleration => Trace(RideSignal.PitchAcceleration);

    /// <summary>Roll acceleration, rad/s².</summary>
    public ImmutableArray<double> RollAcceleration => Trace(RideSignal.RollAcceleration);

    /// <summary>Height of the body above the front axle's middle from trim, m.</summary>
    public ImmutableArray<double> FrontHeight => Trace(RideSignal.BodyHeight(Model, 0.0, 0.0));

    /// <summary>Height of the body above the rear axle's middle from trim, m.</summary>
    public ImmutableArray<double> RearHeight => Trace(RideSignal.BodyHeight(Model, Model.Car.Wheelbase.Si, 0.0));

    /// <summary>The car over the road at a speed.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s. 0.5 to 120.</param>
    /// <param name="options">How to run it.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <exception cref="RefusedValueException">
    /// Speed out of range; a sharp step under a damped tyre; exact pieces of a car with curved laws.
    /// </exception>
    /// <exception cref="RunFailedException">A run in exact pieces did not get on.</exception>
    public static Pass Of(RideModel model, Road road, double speed, PassOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= PassOptions.Default;
        _ = DrivingSpeed.Checked(speed);
        cancellation.ThrowIfCancellationRequested();
        return options.Method.Run(new PassRequest(model, road, speed), options.Record, cancellation);
    }

    /// <summary>Wheel travel from the reference state at corner 0 to 3, m, bump positive.</summary>
    public ImmutableArray<double> Travel(int corner) => Read(RideSignal.Travel(Model, corner).Whole);

    /// <summary>Height of the wheel centre from trim at corner 0 to 3, m.</summary>
    public ImmutableArray<double> WheelHeight(int corner) => Trace(RideSignal.WheelHeight(corner));

    /// <summary>Load of the tyre on the road at corner 0 to 3, N; of the whole wheel for a two-wheeler.</summary>
    public ImmutableArray<double> TyreLoad(int corner) => Read(RideSignal.TyreLoad(Model, corner).Whole);

    /// <summary>Vertical acceleration of a rigid point of the body, m/s², up positive.</summary>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    /// <param name="leftOfMiddle">Left of the middle, m.</param>
    public ImmutableArray<double> VerticalAcceleration(double behindFrontAxle, double leftOfMiddle) =>
        Trace(RideSignal.VerticalAcceleration(Model, behindFrontAxle, leftOfMiddle));

    /// <summary>Fore-aft specific force felt at a height above the pitch axis, m/s² (forward positive).</summary>
    public ImmutableArray<double> ForeAftForce(double height) => Trace(RideSignal.ForeAftForce(height));

    /// <summary>Lateral specific force felt at a height above the roll axis, m/s² (left positive).</summary>
    public ImmutableArray<double> LateralForce(double height) => Trace(RideSignal.LateralForce(height));

    /// <summary>A signal from trim, as the run has it: a tyre's load with its lift-off.</summary>
    /// <param name="signal">The signal, of this car.</param>
    public ImmutableArray<double> Trace(RideSignal signal)
    {
        ArgumentNullException.ThrowIfNull(signal);
        return Read(signal.FromTrim);
    }

    /// <summary>
    /// Road height under the wheel centre at corner 0 to 3 at each sample, m, without contact averaging, from the track's first height: read off the
    /// road at every call.
    /// </summary>
    public ImmutableArray<double> RoadHeight(int corner)
    {
        var met = Road.MetBy(Model.Rolls);
        var profile = corner % 2 == 0 ? met.Left : met.Right;
        var back = corner < 2 ? 0.0 : Model.Car.Wheelbase.Si;
        return [.. Time.Select(t => profile.Height((Speed * t) - back) - profile.StartHeight)];
    }

    /// <summary>A reading of every sample.</summary>
    internal ImmutableArray<double> Read(SampleReading of)
    {
        lock (reading)
        {
            if (!traces.TryGetValue(of, out var trace))
            {
                traces[of] = trace = ReadOff(of);
            }

            return trace;
        }
    }

    private ImmutableArray<double> ReadOff(SampleReading of)
    {
        var values = GC.AllocateUninitializedArray<double>(Count);
        of.Read(samples.Span, Channel.Count, values);
        return ImmutableCollectionsMarshal.AsImmutableArray(values);
    }
}
