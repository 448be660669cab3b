using Heaveline.Elements;

namespace Heaveline.Drives;

/// <summary>
/// Tells a road that begins to climb or to fall from a phone that slips: both turn gravity along the phone's axes at once and for good, but only a
/// car on a ramp then rises, by its speed times the ramp's slope.
/// </summary>
/// <param name="grid">The grid.</param>
/// <param name="force">Specific force, three columns, m/s².</param>
/// <param name="level">Up and gain.</param>
/// <param name="forward">Forward along the phone's axes; null where it is not known.</param>
/// <param name="speed">Speed on the grid, m/s.</param>
internal sealed class RoadRamp(EvenGrid grid, double[][] force, Levelling level, Direction? forward, double[] speed)
{
    // A ramp turns the car about its left axis; so much of the turn may go about forward.
    private const double Sideways = 0.5;
    private const double Slowest = 2.0;
    private const double Least = 0.5;
    private const double Most = 1.6;
    private const double Beside = 8.0;

    /// <summary>Whether a turn of gravity is a ramp's.</summary>
    /// <param name="before">Up along the phone's axes before.</param>
    /// <param name="after">And after.</param>
    /// <param name="at">The sample in the middle of the turn.</param>
    public bool Is(Direction before, Direction after, int at)
    {
        var turn = after - before;
        var (from, to) = (Math.Max(at - (int)(1.5 * grid.Rate), 0), Math.Min(at + (int)(1.5 * grid.Rate), grid.Count - 1));
        var (v, second) = (speed[at], (int)grid.Rate);
        var climb = forward is { } ahead ? turn.Dot(ahead) : turn.Length;
        if (v < Slowest || (forward is { } axis && Math.Abs(turn.Dot(before.Cross(axis))) > Sideways * Math.Abs(climb)))
        {
            return false;
        }

        // What a vertical acceleration that is not quite level adds is what lies beside.
        var wide = (int)(Beside * grid.Rate);
        var (early, late) = (Mean(before, from - wide, from), Mean(after, to, to + wide));
        double rising = 0.0, first = 0.0, last = 0.0;
        for (var i = from; i <= to; i++)
        {
            rising += ((level.Gain * (i < at ? before : after).Dot(Levelling.At(force, i))) - (i < at ? early : late)) / grid.Rate;
            first += i < from + second ? rising / second : 0.0;
            last += i > to - second ? rising / second : 0.0;
        }

        var share = (last - first) / (v * climb);
        return forward is null ? Math.Abs(share) is > Least and < Most : share is > Least and < Most;
    }

    private double Mean(Direction up, int from, int to)
    {
        (from, to) = (Math.Max(from, 0), Math.Min(to, grid.Count - 1));
        var sum = 0.0;
        for (var i = from; i <= to; i++)
        {
            sum += level.Gain * up.Dot(Levelling.At(force, i));
        }

        return to > from ? sum / (to - from + 1) : Gravity.Standard;
    }
}
