namespace Heaveline.Passes;

/// <summary>
/// Distance over time of a car whose speed changes: from knot to knot the speed goes over as 3u² − 2u³, so that its rate has no jumps; before the
/// first knot and after the last it stays.
/// </summary>
internal sealed class ChangingSpeed
{
    private readonly double[] times;
    private readonly double[] speeds;
    private readonly double[] distances;

    /// <param name="times">Times of the knots, s, growing, shape (n), n at least 1.</param>
    /// <param name="speeds">Speeds there, m/s, 0 or above, shape (n).</param>
    public ChangingSpeed(double[] times, double[] speeds)
    {
        (this.times, this.speeds) = (times, speeds);
        distances = new double[times.Length];
        for (var k = 1; k < times.Length; k++)
        {
            distances[k] = distances[k - 1] + (0.5 * (times[k] - times[k - 1]) * (speeds[k - 1] + speeds[k]));
        }
    }

    /// <summary>Distance from the first knot, m, and speed, m/s.</summary>
    public void At(double t, out double distance, out double speed)
    {
        var k = Knot(t);
        if (k < 0 || k == times.Length - 1)
        {
            k = Math.Max(k, 0);
            speed = speeds[k];
            distance = distances[k] + (speed * (t - times[k]));
            return;
        }

        var width = times[k + 1] - times[k];
        var u = (t - times[k]) / width;
        var change = speeds[k + 1] - speeds[k];
        speed = speeds[k] + (change * u * u * (3.0 - (2.0 * u)));
        distance = distances[k] + (width * ((speeds[k] * u) + (change * u * u * u * (1.0 - (0.5 * u)))));
    }

    /// <summary>Rate of the speed, m/s².</summary>
    public double Rate(double t)
    {
        var k = Knot(t);
        if (k < 0 || k == times.Length - 1)
        {
            return 0.0;
        }

        var width = times[k + 1] - times[k];
        var u = (t - times[k]) / width;
        return 6.0 * (speeds[k + 1] - speeds[k]) * u * (1.0 - u) / width;
    }

    private int Knot(double t) => Array.BinarySearch(times, t) is var found && found >= 0 ? found : ~found - 1;
}
