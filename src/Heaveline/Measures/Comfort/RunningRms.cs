namespace Heaveline.Measures.Comfort;

/// <summary>Running r.m.s. of a weighted acceleration from rest, ISO 2631-1 equations (2) to (4). Its largest value is the MTVV.</summary>
public static class RunningRms
{
    /// <summary>
    /// The integration time of the MTVV, 1 s, ISO 2631-1 clause 6.3.1 (after a public transcription; it reproduces the tables of ISO 8041-1, which
    /// do not print it).
    /// </summary>
    public const double IntegrationTime = 1.0;

    /// <summary>√((1/τ)∫ a² over the last τ): the linear window. Before the record the acceleration is zero.</summary>
    /// <param name="weighted">a_w, n samples.</param>
    /// <param name="time">τ, s. A window of a broken number of samples takes a share of its oldest one.</param>
    /// <returns>Shape (n), at each sample, same unit.</returns>
    public static double[] Linear(SampledAcceleration weighted, double time = IntegrationTime)
    {
        var values = weighted.Values;
        var sums = new double[values.Length + 1];
        for (var i = 0; i < values.Length; i++)
        {
            sums[i + 1] = sums[i] + (values[i] * values[i]);
        }

        var window = time * weighted.SamplingRate;
        var whole = (int)Math.Min(Math.Floor(window), values.Length);
        var share = window - Math.Floor(window);
        var running = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var oldest = i - whole;
            var sum = sums[i + 1] - sums[Math.Max(oldest + 1, 0)];
            sum += oldest >= 0 ? share * values[oldest] * values[oldest] : 0.0;
            running[i] = Math.Sqrt(sum / window);
        }

        return running;
    }

    /// <summary>√((1/τ)∫ a² e^((t−t₀)/τ) dt up to now): the exponential average, each sample held for one step.</summary>
    /// <param name="weighted">a_w, n samples.</param>
    /// <param name="time">τ, s.</param>
    /// <returns>Shape (n), at each sample, same unit.</returns>
    public static double[] Exponential(SampledAcceleration weighted, double time = IntegrationTime)
    {
        var values = weighted.Values;
        var keep = Math.Exp(-1.0 / (time * weighted.SamplingRate));
        var take = 1.0 - keep;
        var mean = 0.0;
        var running = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            mean = (keep * mean) + (take * values[i] * values[i]);
            running[i] = Math.Sqrt(mean);
        }

        return running;
    }
}
