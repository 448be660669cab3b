using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>The weighted r.m.s. of one point and axis.</summary>
public sealed record AxisRms
{
    /// <summary>Point and axis.</summary>
    public required PointAxis At { get; init; }

    /// <summary>a_w with that axis's weighting, m/s² or rad/s²; no factor k in it.</summary>
    public required double Rms { get; init => field = Checked.Within(value, 0.0, double.MaxValue, "Give the weighted r.m.s."); }

    /// <summary>k·a_w for comfort, m/s².</summary>
    public double ForComfort => At.ComfortFactor * Rms;
}
