namespace Heaveline.Measures.Comfort;

/// <summary>Why the weighted r.m.s. alone does not say enough.</summary>
public enum EvaluationReason
{
    /// <summary>Crest factor above 9 (ISO 2631-1 clause 6.2).</summary>
    CrestFactor,

    /// <summary>MTVV over r.m.s. above 1.5 (clause 6.3.3, recalled).</summary>
    RunningRms,

    /// <summary>VDV over a_w T^¼ above 1.75 (clause 6.3.3, recalled).</summary>
    VibrationDose,
}
