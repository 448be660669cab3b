namespace Heaveline.Responses;

/// <summary>How far a run is off, from the same run with twice the step.</summary>
internal static class PassError
{
    /// <summary>A third of the largest difference over the run's own peak, for pitch and tyre load; null when the longer step did not hold.</summary>
    public static (double? Pitch, double? Tyre) Of(double[] run, double[] coarse)
    {
        var pitch = Relative(run, coarse, Channel.Pitch, 1);
        var tyre = Relative(run, coarse, Channel.Tyre, 4);
        return (pitch, tyre);
    }

    private static double? Relative(double[] run, double[] coarse, int channel, int count)
    {
        double difference = 0.0, peak = 0.0;
        for (var at = channel; at < run.Length; at += Channel.Count)
        {
            for (var i = at; i < at + count; i++)
            {
                difference = Math.Max(difference, Math.Abs(run[i] - coarse[i]));
                peak = Math.Max(peak, Math.Abs(run[i]));
                if (!double.IsFinite(coarse[i]))
                {
                    return null;
                }
            }
        }

        return peak > 0.0 ? difference / (3.0 * peak) : 0.0;
    }
}
