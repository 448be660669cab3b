namespace Heaveline.Measures.Comfort;

/// <summary>One point and axis of a seated person in a pass: what moved, and what the standard counts of it.</summary>
public sealed record AxisComfort
{
    internal AxisComfort(PointAxis at, double unweightedRms, WeightedAcceleration weighted) =>
        (At, UnweightedRms, Weighted) = (at, unweightedRms, weighted);

    /// <summary>Point and axis.</summary>
    public PointAxis At { get; }

    /// <summary>Root mean square before weighting, m/s² or rad/s².</summary>
    public double UnweightedRms { get; }

    /// <summary>After weighting, with its r.m.s., VDV, MTVV and crest factor; no factor k in them.</summary>
    public WeightedAcceleration Weighted { get; }

    /// <summary>The weighted r.m.s. with its axis; <see cref="AxisRms.ForComfort"/> has the factor k in it.</summary>
    public AxisRms Rms => new() { At = At, Rms = Weighted.Rms };

    /// <summary>Which evaluation applies to this axis.</summary>
    public Evaluation Evaluation => Evaluation.From(Weighted);
}
