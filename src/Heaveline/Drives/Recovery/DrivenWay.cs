namespace Heaveline.Drives.Recovery;

/// <summary>Where speed and yaw rate lead a car that starts eastwards.</summary>
internal static class DrivenWay
{
    private const double Step = 0.05;

    /// <summary>Metres east and north of the start at an instant: chords of a twentieth of a second, straight lines between their ends.</summary>
    /// <param name="line">How it is driven.</param>
    public static Func<double, (double East, double North)> Of(DriveLine line)
    {
        var count = (int)Math.Ceiling(line.Length / Step) + 1;
        var (east, north, heading) = (new double[count], new double[count], 0.0);
        for (var i = 1; i < count; i++)
        {
            var middle = (i - 0.5) * Step;
            var (sine, cosine) = Math.SinCos(heading + (0.5 * Step * line.YawRate(middle)));
            heading += Step * line.YawRate(middle);
            east[i] = east[i - 1] + (Step * line.Speed(middle) * cosine);
            north[i] = north[i - 1] + (Step * line.Speed(middle) * sine);
        }

        return time =>
        {
            var at = Math.Clamp(time / Step, 0.0, count - 1.0);
            var k = Math.Min((int)at, count - 2);
            return (east[k] + ((at - k) * (east[k + 1] - east[k])), north[k] + ((at - k) * (north[k + 1] - north[k])));
        };
    }
}
