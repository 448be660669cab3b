using Heaveline.Cars;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>
/// An obstacle at a speed as <see cref="ClosedSettling"/> takes it: heights at even times, the mean of both wheel tracks, averaged over the tyres'
/// contact length. It must end at the level that it began at.
/// </summary>
internal sealed class SettlingBump
{
    private const int Samples = 96;

    private SettlingBump(double[] heights, double step, double delay, double left) =>
        (Heights, Step, Delay, Left) = (heights, step, delay, left);

    /// <summary>Heights under a front wheel, m, from where the averaged obstacle begins.</summary>
    public double[] Heights { get; }

    /// <summary>Time between them, s.</summary>
    public double Step { get; }

    /// <summary>How much later the rear wheels come, s.</summary>
    public double Delay { get; }

    /// <summary>When the rear wheels have left the obstacle, from the first height on, s.</summary>
    public double Left { get; }

    /// <summary>Of a road at a speed; null where it has no obstacle, or one that does not end at the level that it began at.</summary>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="car">The car that crosses it: its wheelbase and contact length.</param>
    public static SettlingBump? Of(Road road, double speed, Car car)
    {
        if (road.EventEnd is not { } end)
        {
            return null;
        }

        var averaged = road.AveragedOver(car.Front.Tyre.ContactLength);
        double Height(double x) => 0.5 * (averaged.Left.Height(x) + averaged.Right.Height(x));
        var (from, to, length) = (averaged.Start, averaged.End, car.Wheelbase.Si);
        double[] heights = [.. Enumerable.Range(0, Samples + 1).Select(k => Height(from + ((to - from) * k / Samples)) - Height(from))];
        return Math.Abs(heights[^1]) > 1e-6
            ? null
            : new SettlingBump(heights, (to - from) / Samples / DrivingSpeed.Checked(speed), length / speed, (end - from + length) / speed);
    }
}
