using System.Numerics;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>
/// The largest samples that a sensor in a road vehicle may give; beyond them a number is a slip of the file, and its square may have no end.
/// Proposals of this program: ten times what sensors of phones and loggers reach, and twice the speed of the fastest cars.
/// </summary>
public static class SensorBound
{
    private const double Acceleration = 4000.0;
    private const double TurnRate = 200.0;
    private const double Speed = 200.0;

    /// <summary>The bound of a sensor in SI units; none for a position. A speed whose unit nobody says may stand in km/h.</summary>
    /// <param name="kind">What is measured.</param>
    /// <param name="unitSaid">The unit that the header says; blank for none.</param>
    public static double Of(SensorKind kind, string unitSaid) => kind switch
    {
        SensorKind.TurnRate => TurnRate,
        SensorKind.Speed => SpeedUnit.All.Any(u => u.Name == unitSaid) ? Speed : Speed / SpeedUnit.All[1].Factor,
        SensorKind.Position => double.PositiveInfinity,
        _ => Acceleration,
    };

    /// <summary>The SI unit of a sensor's samples.</summary>
    /// <param name="kind">What is measured.</param>
    public static string UnitOf(SensorKind kind) => kind switch
    {
        SensorKind.TurnRate => "rad/s",
        SensorKind.Speed => "m/s",
        SensorKind.Position => "rad",
        _ => "m/s²",
    };

    // How many of the first ones lie within it, as many at once as the processor has room for.
    private static int Within(ReadOnlySpan<double> values, double most)
    {
        var (i, width, bound) = (0, Vector<double>.Count, new Vector<double>(most));
        while (i + width <= values.Length && Vector.LessThanOrEqualAll(Vector.Abs(new Vector<double>(values[i..])), bound))
        {
            i += width;
        }

        return i;
    }

    /// <summary>Looks whether all samples of a sensor lie within its bound.</summary>
    /// <param name="track">The sensor; null: nothing to look at.</param>
    /// <exception cref="RefusedValueException">One does not.</exception>
    public static void Check(SensorTrack? track)
    {
        var most = track is null ? 0.0 : Of(track.Kind, track.UnitSaid);
        foreach (var column in track?.Values ?? [])
        {
            var values = column.AsSpan();
            for (var i = Within(values, most); i < values.Length; i++)
            {
                if (!(Math.Abs(values[i]) <= most))
                {
                    throw new RefusedValueException(
                        "a sample of " + track!.File,
                        Text($"{values[i]:G3}, {track.Times[i]:F2} s after the start"),
                        Text($"{most:G4} {UnitOf(track.Kind)} at the most"),
                        "Take that row out of the file.");
                }
            }
        }
    }
}
