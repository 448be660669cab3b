namespace Heaveline.Measures.Comfort;

/// <summary>
/// A weighted acceleration in time, and the numbers ISO 2631-1 draws from it. "Unit" below is m/s² along an axis, rad/s² about one.
/// </summary>
public sealed class WeightedAcceleration
{
    internal WeightedAcceleration(Weighting weighting, SampledAcceleration samples)
    {
        Weighting = weighting;
        Samples = samples;
        var square = 0.0;
        var fourth = 0.0;
        foreach (var value in samples.Values)
        {
            var squared = value * value;
            square += squared;
            fourth += squared * squared;
            Peak = Math.Max(Peak, Math.Abs(value));
        }

        var n = samples.Values.Length;
        Rms = Math.Sqrt(square / n);
        VibrationDose = Math.Pow(fourth / samples.SamplingRate, 0.25);
        MotionSicknessDose = Math.Sqrt(square / samples.SamplingRate);
        LinearMtvv = Largest(RunningRms.Linear(samples));
        ExponentialMtvv = Largest(RunningRms.Exponential(samples));
    }

    /// <summary>The weighting applied.</summary>
    public Weighting Weighting { get; }

    /// <summary>a_w(t), as long as the record.</summary>
    public SampledAcceleration Samples { get; }

    /// <summary>T, s.</summary>
    public double Duration => Samples.Duration;

    /// <summary>a_w = √((1/T)∫a_w² dt) over the whole record, unit; ISO 2631-1 equation (1).</summary>
    public double Rms { get; }

    /// <summary>Largest |a_w(t)|, unit.</summary>
    public double Peak { get; }

    /// <summary>Peak over r.m.s. (–); none when nothing moved. ISO 2631-1 clause 6.2.</summary>
    public double? CrestFactor => Rms > 0.0 ? Peak / Rms : null;

    /// <summary>VDV = (∫a_w⁴ dt)^¼, unit·s^¼; ISO 2631-1 equation (5).</summary>
    public double VibrationDose { get; }

    /// <summary>MSDV = (∫a_w² dt)^½, unit·s^½; ISO 2631-1 clause 9, meant for the vertical weighted with Wf.</summary>
    public double MotionSicknessDose { get; }

    /// <summary>MTVV: largest running r.m.s. over a linear window of 1 s, unit.</summary>
    public double LinearMtvv { get; }

    /// <summary>MTVV: largest running r.m.s. with exponential averaging, τ = 1 s, unit.</summary>
    public double ExponentialMtvv { get; }

    /// <summary>Weights a record with a filter made for its rate.</summary>
    /// <param name="acceleration">The acceleration.</param>
    /// <param name="weighting">The weighting.</param>
    /// <param name="mustReach">See <see cref="WeightingFilter.Of"/>.</param>
    public static WeightedAcceleration From(SampledAcceleration acceleration, Weighting weighting, double? mustReach = null) =>
        WeightingFilter.Of(weighting, acceleration.SamplingRate, mustReach).Weigh(acceleration);

    private static double Largest(double[] values)
    {
        var largest = 0.0;
        foreach (var value in values)
        {
            largest = Math.Max(largest, value);
        }

        return largest;
    }
}
