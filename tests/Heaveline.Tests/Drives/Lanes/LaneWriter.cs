using System.Globalization;
using System.Text;
using Heaveline.Drives;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>A log as the loggers of the demo write it.</summary>
internal static class LaneWriter
{
    /// <summary>One text, comma separated, units in the header, seconds; the last fix of the speed in every row.</summary>
    public static string Whole(Log log)
    {
        var (force, turn, speed) = (log.Of(SensorKind.Acceleration)!, log.Of(SensorKind.TurnRate)!, log.Of(SensorKind.Speed)!);
        var text = new StringBuilder("time (s),accelX (m/s²),accelY (m/s²),accelZ (m/s²),gyroX (rad/s),gyroY (rad/s),gyroZ (rad/s),speed (km/h)\n");
        var fix = 0;
        for (var i = 0; i < force.Times.Length; i++)
        {
            while (fix + 1 < speed.Times.Length && speed.Times[fix + 1] <= force.Times[i])
            {
                fix++;
            }

            text.Append(Invariant(force.Times[i], "F5")).Append(',');
            text.AppendJoin(',', force.Values.Select(v => Invariant(v[i], "F4"))).Append(',');
            text.AppendJoin(',', turn.Values.Select(v => Invariant(v[i], "F5"))).Append(',');
            text.Append(Invariant(3.6 * speed.Values[0][fix], "F2")).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>A text a sensor: semicolons, decimal commas, nanoseconds since some day.</summary>
    public static IReadOnlyList<(string Name, string Text)> Apart(Log log) =>
    [
        ("Accelerometer.csv", Table(log.Of(SensorKind.Acceleration)!, ["x", "y", "z"], 1.0, "F4")),
        ("Gyroscope.csv", Table(log.Of(SensorKind.TurnRate)!, ["x", "y", "z"], 1.0, "F5")),
        ("Location.csv", Table(log.Of(SensorKind.Speed)!, ["speed (km/h)"], 3.6, "F2")),
    ];

    private static string Table(SensorTrack track, string[] names, double scale, string digits)
    {
        const long day = 1_700_000_000_000_000_000L;
        var text = new StringBuilder("time;").AppendJoin(';', names).Append("\r\n");
        for (var i = 0; i < track.Times.Length; i++)
        {
            text.Append((day + (long)Math.Round(1e9 * track.Times[i])).ToString(CultureInfo.InvariantCulture)).Append(';');
            text.AppendJoin(';', track.Values.Select(v => Invariant(scale * v[i], digits).Replace('.', ','))).Append("\r\n");
        }

        return text.ToString();
    }

    private static string Invariant(double value, string digits) => value.ToString(digits, CultureInfo.InvariantCulture);
}
