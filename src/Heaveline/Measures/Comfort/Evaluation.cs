using System.Globalization;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// Which evaluation of ISO 2631-1 applies to a weighted acceleration, and why. The weighted r.m.s. is always reported; the running r.m.s. (MTVV) and
/// the vibration dose value (VDV) are to be reported with it when the motion has shocks that an r.m.s. hides.
/// </summary>
public sealed record Evaluation
{
    /// <summary>Crest factor up to which the basic method is held adequate (–), clause 6.2.</summary>
    public const double LargestCrestFactor = 9.0;

    /// <summary>MTVV/a_w above which the running r.m.s. matters (–), clause 6.3.3. Recalled, not read.</summary>
    public const double LargestRunningRatio = 1.5;

    /// <summary>VDV/(a_w T^¼) above which the dose matters (–), clause 6.3.3. Recalled, not read. A sine has 1.107, Gaussian noise 1.316.</summary>
    public const double LargestDoseRatio = 1.75;

    private Evaluation(double? crestFactor, double? runningRatio, double? doseRatio)
    {
        CrestFactor = crestFactor;
        RunningRatio = runningRatio;
        DoseRatio = doseRatio;
        List<EvaluationReason> reasons = [];
        if (crestFactor > LargestCrestFactor)
        {
            reasons.Add(EvaluationReason.CrestFactor);
        }

        if (runningRatio > LargestRunningRatio)
        {
            reasons.Add(EvaluationReason.RunningRms);
        }

        if (doseRatio > LargestDoseRatio)
        {
            reasons.Add(EvaluationReason.VibrationDose);
        }

        Reasons = reasons;
    }

    /// <summary>Peak over r.m.s. (–); none when nothing moved.</summary>
    public double? CrestFactor { get; }

    /// <summary>MTVV (linear window of 1 s) over r.m.s. (–); none when nothing moved.</summary>
    public double? RunningRatio { get; }

    /// <summary>VDV/(a_w T^¼) (–); none when nothing moved.</summary>
    public double? DoseRatio { get; }

    /// <summary>Why more than the r.m.s. is needed; empty: it is enough.</summary>
    public IReadOnlyList<EvaluationReason> Reasons { get; }

    /// <summary>Whether the weighted r.m.s. is enough.</summary>
    public bool RmsIsEnough => Reasons.Count == 0;

    /// <summary>Whether MTVV is to be reported too: its own ratio or the crest factor asks for it.</summary>
    public bool ReportRunningRms => Reasons.Contains(EvaluationReason.RunningRms) || Reasons.Contains(EvaluationReason.CrestFactor);

    /// <summary>Whether VDV is to be reported too: its own ratio or the crest factor asks for it.</summary>
    public bool ReportVibrationDose => Reasons.Contains(EvaluationReason.VibrationDose) || Reasons.Contains(EvaluationReason.CrestFactor);

    /// <summary>One sentence that says which evaluation applies and why.</summary>
    public string Words => this switch
    {
        { CrestFactor: null } => "Nothing moved: there is nothing to evaluate.",
        { RmsIsEnough: true } => string.Create(
            CultureInfo.InvariantCulture,
            $"The weighted r.m.s. is enough: crest factor {CrestFactor:F1}, MTVV {RunningRatio:F2} and VDV {DoseRatio:F2} of "
            + $"what the r.m.s. alone would give."),
        _ => $"The weighted r.m.s. hides shocks ({string.Join(", ", Reasons.Select(Because))}): report {string.Join(" and ", Wanted())} beside it.",
    };

    /// <summary>Judges a weighted acceleration.</summary>
    public static Evaluation From(WeightedAcceleration weighted) => weighted.Rms > 0.0
        ? new(weighted.CrestFactor, weighted.LinearMtvv / weighted.Rms, weighted.VibrationDose / (weighted.Rms * Math.Pow(weighted.Duration, 0.25)))
        : new(null, null, null);

    private string Because(EvaluationReason reason) => reason switch
    {
        EvaluationReason.CrestFactor => string.Create(CultureInfo.InvariantCulture, $"crest factor {CrestFactor:F1}, above 9"),
        EvaluationReason.RunningRms => string.Create(CultureInfo.InvariantCulture, $"MTVV {RunningRatio:F2} times the r.m.s., above 1.5"),
        _ => string.Create(CultureInfo.InvariantCulture, $"VDV {DoseRatio:F2} times a_w·T^¼, above 1.75"),
    };

    private IEnumerable<string> Wanted()
    {
        if (ReportRunningRms)
        {
            yield return "MTVV";
        }

        if (ReportVibrationDose)
        {
            yield return "VDV";
        }
    }
}
