namespace Heaveline.Drives.Events;

/// <summary>The speed at a bump.</summary>
/// <param name="Value">Speed, m/s.</param>
/// <param name="HalfWidth">Half-width of its 90 % interval, m/s.</param>
/// <param name="Change">Rate at which it changes over itself, 1/s.</param>
internal readonly record struct EventSpeed(double Value, double HalfWidth, double Change)
{
    // What satellites are good for: 3 % and 0.2 m/s. Proposals of this program.
    private const double Share = 0.03;
    private const double Least = 0.2;

    // Without a speed: 25 km/h, or the spacing of the axles' knocks where they repeat each other at least so well.
    private const double Rough = 7.0;
    private const double RoughShare = 0.6;
    private const double PairShare = 0.25;
    private const double Alike = 0.5;
    private const double Slowest = 3.5;
    private const double Fastest = 25.0;

    /// <summary>The speed at an instant.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="time">The instant, s since the log's start.</param>
    /// <param name="wheelbase">Wheelbase, m.</param>
    public static EventSpeed At(Drive drive, double time, double wheelbase)
    {
        if (drive.Speed.IsEmpty)
        {
            return Guessed(drive, time, wheelbase);
        }

        var i = Place(time);
        var value = Math.Max(drive.Speed[i], 0.0);
        var (from, to) = (Place(time - 0.5), Place(time + 1.5));
        var change = to > from ? (drive.Speed[to] - drive.Speed[from]) * drive.Rate / (to - from) : 0.0;
        return new EventSpeed(value, (Share * value) + Least, change / Math.Max(value, 1.0));

        int Place(double t) => Math.Clamp((int)Math.Round((t - drive.Start) * drive.Rate), 0, drive.Speed.Length - 1);
    }

    // The knocks of both axles, one after the other, make the vertical acceleration like itself some time later.
    private static EventSpeed Guessed(Drive drive, double time, double wheelbase)
    {
        var (first, last) = (Math.Max(0, Place(time - 1.5)), Math.Min(drive.Vertical.Length - 1, Place(time + 1.5)));
        var knock = ZeroPhase.Band(drive.Vertical.AsSpan()[first..(last + 1)], drive.Rate, 2.0, Math.Min(15.0, 0.45 * drive.Rate));
        var whole = knock.Sum(k => k * k);
        var (best, at) = (0.0, 0);
        for (var lag = (int)Math.Ceiling(drive.Rate * wheelbase / Fastest); lag <= drive.Rate * wheelbase / Slowest && lag < knock.Length; lag++)
        {
            var sum = 0.0;
            for (var i = lag; i < knock.Length; i++)
            {
                sum += knock[i] * knock[i - lag];
            }

            // Two equal knocks are like themselves by a half.
            (best, at) = whole > 0.0 && 2.0 * sum / whole > best ? (2.0 * sum / whole, lag) : (best, at);
        }

        var value = best > Alike ? wheelbase * drive.Rate / at : Rough;
        return new EventSpeed(value, (best > Alike ? PairShare : RoughShare) * value, 0.0);

        int Place(double t) => (int)Math.Round((t - drive.Start) * drive.Rate);
    }
}
