using Heaveline.Measures.Comfort;

namespace Heaveline.Drives;

/// <summary>The vibration of the floor along or about one axis, weighted by its effect on people (ISO 2631-1).</summary>
public sealed record ComfortAxis
{
    /// <summary>Along or about which axis.</summary>
    public required MotionAxis Axis { get; init; }

    /// <summary>The weighting.</summary>
    public required Weighting Weighting { get; init; }

    /// <summary>Root mean square, m/s² or rad/s².</summary>
    public required double Rms { get; init; }

    /// <summary>MTVV: the greatest root mean square over one second, same unit.</summary>
    public required double Mtvv { get; init; }

    /// <summary>VDV, same unit times s^¼.</summary>
    public required double Dose { get; init; }

    /// <summary>Greatest value, same unit.</summary>
    public required double Peak { get; init; }

    /// <summary>Greatest value over the root mean square; null where nothing moved.</summary>
    public double? CrestFactor => Rms > 0.0 ? Peak / Rms : null;
}
