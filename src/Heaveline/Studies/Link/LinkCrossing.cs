using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>One crossing of the hump that a link is tried on: with the link, and with separate springs as stiff in heave.</summary>
public sealed record LinkCrossing
{
    /// <summary>
    /// Differences below this share of the number are no differences (–): what springs of one delivery differ by, and less than is felt.
    /// </summary>
    public const double Alike = 0.005;

    /// <summary>A pipe that pushes a wheel with more than this part of its load is too thin (–). Own criterion, no source.</summary>
    public const double Thin = 0.1;

    /// <summary>Speed, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>The pass with the link.</summary>
    public required Pass With { get; init; }

    /// <summary>The pass with separate springs and dampers; null where there are none that could stand in.</summary>
    public required Pass? Separate { get; init; }

    /// <summary>The pass of the car as its file has it, where another link is tried on it; null where none is.</summary>
    public Pass? Before { get; init; }

    /// <summary>
    /// Settling with the link over that without (–): RMS pitch of the first second. Null when a pass broke off or the pipe is not counted.
    /// </summary>
    public double? SettlingRatio => Ratio(SettlingCatalogue.RmsPitch);

    /// <summary>Hit with the link over that without (–): peak pitch acceleration. Null as there.</summary>
    public double? HitRatio => Ratio(HitCatalogue.PeakPitchAcceleration);

    /// <summary>How the fluid runs in it; null without a pipe of known bore.</summary>
    public PipeFlow? Flow => PipeFlow.Of(With);

    /// <summary>A number of one side; null when there is none.</summary>
    /// <param name="measure">What.</param>
    /// <param name="pass">Of which side.</param>
    public static double? Of(Measure<Pass> measure, Pass? pass)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return pass is { Outcome: PassOutcome.Completed } && measure.Of(pass) is var value && double.IsFinite(value) ? value : null;
    }

    /// <summary>
    /// Whether the pass counts the pipe nearly as it is: false where a turbulent flow pushes a front wheel with more than a tenth of its load beyond
    /// what laminar flow does. The pass is then that of a wider pipe, and tells nothing of this one. Own criterion, no source.
    /// </summary>
    public bool IsPipeCounted => Flow is not { } flow || flow.FrontForce - (flow.FrontForce / flow.LossRatio) <= Thin * FrontLoad;

    /// <summary>A number of the pass with the link; null when there is none, or none that tells anything.</summary>
    /// <param name="measure">What.</param>
    public double? WithLink(Measure<Pass> measure) => IsPipeCounted ? Of(measure, With) : null;

    /// <summary>What a front wheel stands with, N.</summary>
    internal double FrontLoad => With.Model.Trim.WheelLoad[0];

    private double? Ratio(Measure<Pass> measure) => Of(measure, Separate) is > 0.0 and { } separate ? WithLink(measure) / separate : null;

    /// <summary>The speed as printed.</summary>
    public string SpeedWords => Numeral.Of(In.KilometresPerHour.Of(Speed), "0.#");
}
