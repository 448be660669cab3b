using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>Solves a pass in steps of one length, for every car. Immutable: change a copy with <c>with</c>.</summary>
public sealed record FixedStep : PassMethod
{
    /// <summary>The usual steps; the run states its own error.</summary>
    public static FixedStep Default { get; } = new();

    /// <summary>The usual steps, run once: no error is stated.</summary>
    public static FixedStep Once { get; } = new() { StatesError = false };

    /// <summary>Largest step, s. 1e-6 to 0.002. Default 0.625 ms; the run takes a smaller one where the car's fastest motion asks for it.</summary>
    public double LargestStep { get; init => field = Checked.Within(value, 1e-6, 2e-3); } = 0.625e-3;

    /// <summary>Whether the run is repeated with twice the step, or half of it, to state its own error. Default true.</summary>
    public bool StatesError { get; init; } = true;

    /// <summary>
    /// Whether passes side by side are computed in single precision, twice as many at a time, on a processor with such lanes or on a device; what
    /// rounding adds is stated (<see cref="PassError.PitchInSingle"/>). No study asks for it, since its rounding shows in the fourth digit: it is
    /// there to be raced. A pass alone is always in double precision. Default false.
    /// </summary>
    internal bool InSingle { get; init; }

    internal static PassStatistics Statistics(PassTiming timing, double? pitchError, double? tyreLoadError) => new()
    {
        Method = "fixed step, Adams–Bashforth of fourth order",
        Step = timing.Step,
        Steps = timing.Steps,
        PitchError = pitchError,
        TyreLoadError = tyreLoadError,
    };

    internal override Pass Run(PassRequest request, PassRecord record, CancellationToken cancellation)
    {
        var (model, road, speed) = request;
        var timing = PassTiming.Of(request, record, this);
        var wheels = RoadUnderWheels.Of(model, road);
        var samples = PassRun.Of(model, wheels, speed, timing, cancellation);
        var (pitch, tyre) = (default(double?), default(double?));
        if (StatesError)
        {
            (pitch, tyre) = PassError.Of(
                model,
                wheels,
                timing.AgainstHalf,
                samples,
                [.. timing.Compared(wheels.HasJump).Select(other => PassRun.Of(model, wheels, speed, other, cancellation))]);
        }

        return new Pass(request, timing, samples, Statistics(timing, pitch, tyre));
    }
}
