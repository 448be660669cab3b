using Heaveline.Models;
using Heaveline.Passes.Exact;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>
/// One crossing of a road by a car at a constant speed, computed with every nonlinearity of the model. t = 0 when the front wheel centres stand at
/// x = 0. All traces have one value per sample; angles nose-down and right-side-down positive, travel bump positive from the reference state.
/// </summary>
public sealed class Pass
{
    private readonly ReadOnlyMemory<double> samples;
    private readonly int channels;
    private readonly RideNumbers numbers;

    // Of a pass that never leaves the library not all need be recorded: see Measure.Reads.
    internal Pass(
        RideModel model,
        Road road,
        double speed,
        PassTiming timing,
        ReadOnlyMemory<double> samples,
        PassStatistics statistics,
        int channels = Channel.Count)
    {
        var (outcome, good, sentence) = PassRange.Of(model, samples.Span, timing, channels);
        Model = model;
        Road = road;
        Speed = speed;
        Outcome = outcome;
        OutcomeSentence = sentence;
        Statistics = statistics;
        SampleStep = timing.SampleStep;
        Count = good;
        this.samples = samples;
        this.channels = channels;
        numbers = model.Numbers;
        Time = new double[good];
        for (var k = 0; k < good; k++)
        {
            Time[k] = timing.Start + (k * timing.SampleStep);
        }

        RearLeaves = ((road.EventEnd ?? road.End) + model.Car.Wheelbase.Si) / speed;
    }

    /// <summary>The car and its load.</summary>
    public RideModel Model { get; }

    /// <summary>The road.</summary>
    public Road Road { get; }

    /// <summary>Speed, m/s.</summary>
    public double Speed { get; }

    /// <summary>How it ended.</summary>
    public PassOutcome Outcome { get; }

    /// <summary>What happened when it did not run to its end: place, value, limit, advice. Empty when it did.</summary>
    public string OutcomeSentence { get; }

    /// <summary>How it was computed and how far it may be off.</summary>
    public PassStatistics Statistics { get; }

    /// <summary>Number of good samples.</summary>
    public int Count { get; }

    /// <summary>Time between samples, s.</summary>
    public double SampleStep { get; }

    /// <summary>Time of each sample, s.</summary>
    public double[] Time { get; }

    /// <summary>When the rear wheel centres leave the obstacle (or the road's end), s: from here on the car settles.</summary>
    public double RearLeaves { get; }

    /// <summary>The road in words, as this vehicle meets it.</summary>
    internal string RoadCaption => Road.CaptionFor(Model.Rolls);

    /// <summary>Rate of the flow through the line of a side, m³/s, from the front to the rear; 0 without a fluid line.</summary>
    /// <param name="side">0 left, 1 right.</param>
    internal double[] FlowRate(int side) => Raw(Channel.Rates + Channel.Flow + side);

    /// <summary>Heave of the loaded centre of gravity from trim, m, up positive.</summary>
    public double[] Heave => Raw(Channel.Heave);

    /// <summary>Pitch from trim, rad, nose-down positive.</summary>
    public double[] Pitch => Raw(Channel.Pitch);

    /// <summary>Roll from trim, rad, right-side-down positive.</summary>
    public double[] Roll => Raw(Channel.Roll);

    /// <summary>Pitch rate, rad/s.</summary>
    public double[] PitchRate => Raw(Channel.Rates + Channel.Pitch);

    /// <summary>Heave acceleration, m/s².</summary>
    public double[] HeaveAcceleration => Raw(Channel.Accelerations + Channel.Heave);

    /// <summary>Pitch acceleration, rad/s².</summary>
    public double[] PitchAcceleration => Raw(Channel.Accelerations + Channel.Pitch);

    /// <summary>Roll acceleration, rad/s².</summary>
    public double[] RollAcceleration => Raw(Channel.Accelerations + Channel.Roll);

    /// <summary>Height of the body above the front axle's middle from trim, m.</summary>
    public double[] FrontHeight => BodyHeight(numbers.X[0], -numbers.Body.LeftOfMiddle);

    /// <summary>Height of the body above the rear axle's middle from trim, m.</summary>
    public double[] RearHeight => BodyHeight(numbers.X[2], -numbers.Body.LeftOfMiddle);

    /// <summary>The car over the road at a speed.</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s. 0.5 to 120.</param>
    /// <param name="options">How to run it.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <exception cref="RefusedValueException">
    /// Speed out of range; a sharp step under a damped tyre; a certified run of a car with curved laws.
    /// </exception>
    /// <exception cref="RunFailedException">A certified run did not get on.</exception>
    public static Pass Of(RideModel model, Road road, double speed, PassOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= PassOptions.Default;
        _ = DrivingSpeed.Checked(speed);
        cancellation.ThrowIfCancellationRequested();
        var timing = PassTiming.Of(model, road, speed, options);
        if (options.Certified)
        {
            var exact = ExactRun.Of(model, road, speed, timing.Start, timing.SampleStep, timing.Samples, cancellation: cancellation);
            return new Pass(model, road, speed, timing, exact.Samples, Exact(exact));
        }

        var wheels = RoadUnderWheels.Of(model, road);
        var samples = PassRun.Of(model, wheels, speed, timing);
        var (pitch, tyre) = (default(double?), default(double?));
        if (options.StatesError)
        {
            cancellation.ThrowIfCancellationRequested();
            (pitch, tyre) = PassError.Of(
                model, samples, PassRun.Of(model, wheels, speed, timing with { StepsPerSample = timing.StepsPerSample / 2 }));
        }

        return new Pass(model, road, speed, timing, samples, FixedStep(timing, pitch, tyre));
    }

    private static PassStatistics Exact(ExactRun run) => new()
    {
        Method = "exact pieces from kink to kink, Taylor series of order 14",
        Step = run.Samples.Length / Channel.Count * run.OutputStep / run.Statistics.Pieces,
        Steps = (int)run.Statistics.Pieces,
    };

    internal static PassStatistics FixedStep(PassTiming timing, double? pitch, double? tyre) => new()
    {
        Method = "fixed step, Adams–Bashforth of fourth order",
        Step = timing.Step,
        Steps = timing.Samples * timing.StepsPerSample,
        PitchError = pitch,
        TyreLoadError = tyre,
    };

    /// <summary>Wheel travel from the reference state at corner 0 to 3, m, bump positive.</summary>
    public double[] Travel(int corner) => From(s => PassRange.Travel(numbers, s, corner));

    /// <summary>Height of the wheel centre from trim at corner 0 to 3, m.</summary>
    public double[] WheelHeight(int corner) => Raw(Channel.Wheel + corner);

    /// <summary>Load of the tyre on the road at corner 0 to 3, N; of the whole wheel for a two-wheeler.</summary>
    public double[] TyreLoad(int corner) => From(s => Whole * (numbers.TrimLoad[corner] + s[Channel.Tyre + corner]));

    /// <summary>Vertical acceleration of a rigid point of the body, m/s²: z̈ − x·θ̈ + y·φ̈.</summary>
    /// <param name="behindFrontAxle">Behind the front axle, m.</param>
    /// <param name="leftOfMiddle">Left of the middle, m.</param>
    public double[] VerticalAcceleration(double behindFrontAxle, double leftOfMiddle)
    {
        var x = numbers.Body.BehindFrontAxle - behindFrontAxle;
        var y = leftOfMiddle - numbers.Body.LeftOfMiddle;
        return From(s => s[Channel.Accelerations] - (x * s[Channel.Accelerations + Channel.Pitch]) + (y * s[Channel.Accelerations + Channel.Roll]));
    }

    /// <summary>Fore-aft specific force felt at a height above the pitch axis, m/s²: h·θ̈ − g·θ (forward positive).</summary>
    public double[] ForeAftForce(double height) =>
        From(s => (height * s[Channel.Accelerations + Channel.Pitch]) - (Gravity.Standard * s[Channel.Pitch]));

    /// <summary>Lateral specific force felt at a height above the roll axis, m/s²: −h·φ̈ + g·φ (left positive).</summary>
    public double[] LateralForce(double height) =>
        From(s => (-height * s[Channel.Accelerations + Channel.Roll]) + (Gravity.Standard * s[Channel.Roll]));

    /// <summary>
    /// Road height under the wheel centre at corner 0 to 3 at each sample, m, without contact averaging, from the track's first height.
    /// </summary>
    public double[] RoadHeight(int corner)
    {
        var profile = corner % 2 == 0 ? Road.Left : Road.Right;
        var back = corner < 2 ? 0.0 : Model.Car.Wheelbase.Si;
        return [.. Time.Select(t => profile.Height((Speed * t) - back) - profile.StartHeight)];
    }

    /// <summary>A signal from trim, as the run has it: a tyre's load with its lift-off.</summary>
    /// <param name="signal">The signal, of this car.</param>
    public double[] Trace(RideSignal signal)
    {
        ArgumentNullException.ThrowIfNull(signal);
        return signal.Tyre is { } tyre ? From(s => tyre.Whole * s[Channel.Tyre + tyre.Corner]) : From(s => signal.Read(s));
    }

    private double Whole => Model.Rolls ? 1.0 : 2.0;

    private double[] BodyHeight(double x, double y) => From(s => s[Channel.Heave] - (x * s[Channel.Pitch]) + (y * s[Channel.Roll]));

    private double[] Raw(int channel)
    {
        Recorded(channel);
        var values = new double[Count];
        var all = samples.Span;
        for (int k = 0, at = channel; k < values.Length; k++, at += channels)
        {
            values[k] = all[at];
        }

        return values;
    }

    private double[] From(Func<ReadOnlySpan<double>, double> of)
    {
        var values = new double[Count];
        for (var k = 0; k < values.Length; k++)
        {
            values[k] = of(samples.Span.Slice(k * channels, channels));
        }

        return values;
    }

    private void Recorded(int channel)
    {
        if (channel >= channels)
        {
            throw new InvalidOperationException($"Channel {channel} was not recorded: this pass keeps the first {channels} only.");
        }
    }
}
