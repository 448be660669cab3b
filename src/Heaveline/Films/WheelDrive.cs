namespace Heaveline.Films;

/// <summary>Wheel heights of a pass as a curve: what drives the car between them.</summary>
internal sealed class WheelDrive
{
    // A hub is smoothed over so long either way, s: a wheel that hops at 12 Hz loses a twentieth.
    private const double Smoothed = 0.034;

    private readonly double[] front;
    private readonly double[] rear;

    private WheelDrive(double[] front, double[] rear, double step, double wheelbase) =>
        (this.front, this.rear, Step, Wheelbase) = (front, rear, step, wheelbase);

    public double Step { get; }

    public double Wheelbase { get; }

    public int Count => front.Length;

    public static WheelDrive Of(SeenPass pass)
    {
        var reach = (int)Math.Round(Smoothed / pass.Step);
        return new WheelDrive(Smooth([.. pass.FrontWheel], reach), Smooth([.. pass.RearWheel], reach), pass.Step, pass.Wheelbase);
    }

    /// <summary>The same road at another speed, seen for longer on level road.</summary>
    /// <param name="faster">Times as fast.</param>
    /// <param name="longer">Time more, s.</param>
    public WheelDrive At(double faster, double longer)
    {
        var count = (int)((Count - 1) / faster) + 1;
        var more = (int)Math.Round(longer / Step);
        double[] Stretched(double[] of) => [.. Enumerable.Range(0, count + more).Select(i =>
        {
            var place = Math.Min(i * faster, of.Length - 1.001);
            var k = (int)place;
            return i >= count ? 0.0 : of[k] + ((place - k) * (of[k + 1] - of[k]));
        })];
        return new WheelDrive(Stretched(front), Stretched(rear), Step, Wheelbase);
    }

    /// <summary>Heights and their rates between one sample and the next: the cubic whose slopes are those of the neighbours.</summary>
    public (double Front, double FrontRate, double Rear, double RearRate) At(int i, double share)
    {
        var (f, df) = Between(front, i, share);
        var (r, dr) = Between(rear, i, share);
        return (f, df, r, dr);
    }

    private (double Value, double Rate) Between(double[] of, int i, double t)
    {
        var (p0, p1) = (of[i], of[i + 1]);
        var m0 = 0.5 * (p1 - of[Math.Max(0, i - 1)]);
        var m1 = 0.5 * (of[Math.Min(of.Length - 1, i + 2)] - p0);
        var (c2, c3) = ((3.0 * (p1 - p0)) - (2.0 * m0) - m1, m0 + m1 - (2.0 * (p1 - p0)));
        return (p0 + (t * (m0 + (t * (c2 + (t * c3))))), (m0 + (t * ((2.0 * c2) + (3.0 * c3 * t)))) / Step);
    }

    /// <summary>A parabola by least squares over so many samples either way, its value in the middle (Savitzky and Golay, 1964).</summary>
    internal static double[] Smooth(double[] of, int reach)
    {
        if (reach < 2 || of.Length < (2 * reach) + 1)
        {
            return of;
        }

        double n = (2 * reach) + 1;
        var (s2, s4) = (0.0, 0.0);
        for (var j = -reach; j <= reach; j++)
        {
            s2 += j * j;
            s4 += (double)j * j * j * j;
        }

        var result = new double[of.Length];
        for (var i = 0; i < of.Length; i++)
        {
            // At the ends as far as there is as much on both sides.
            if (i < reach || i >= of.Length - reach)
            {
                result[i] = of[i];
                continue;
            }

            var sum = 0.0;
            for (var j = -reach; j <= reach; j++)
            {
                sum += (s4 - (s2 * j * j)) / ((n * s4) - (s2 * s2)) * of[i + j];
            }

            result[i] = sum;
        }

        return result;
    }
}
