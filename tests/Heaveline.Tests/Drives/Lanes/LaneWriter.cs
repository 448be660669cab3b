using System.Globalization;
using System.Text;
using Heaveline.Drives;
using Heaveline.Quantities;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>A log as the loggers of the demo write it.</summary>
internal static class LaneWriter
{
    /// <summary>One text, comma separated, units in the header, seconds; the last fix in every row.</summary>
    public static string Whole(Log log)
    {
        var (force, turn, speed) = (log.Of(SensorKind.Acceleration)!, log.Of(SensorKind.TurnRate)!, log.Of(SensorKind.Speed)!);
        var position = log.Of(SensorKind.Position);
        var text = new StringBuilder("time (s),accelX (m/s²),accelY (m/s²),accelZ (m/s²),gyroX (rad/s),gyroY (rad/s),gyroZ (rad/s),speed (km/h)");
        text.Append(position is null ? "\n" : ",latitude (°),longitude (°),accuracy (m)\n");
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
            text.AppendJoin(',', [Invariant(3.6 * speed.Values[0][fix], "F2"), .. position is null ? [] : Fix(position, fix)]).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>A text a sensor: semicolons, decimal commas, nanoseconds since some day.</summary>
    public static IReadOnlyList<(string Name, string Text)> Apart(Log log) =>
    [
        ("Accelerometer.csv", Table(log.Of(SensorKind.Acceleration)!, ["x", "y", "z"], 1.0, "F4")),
        ("Gyroscope.csv", Table(log.Of(SensorKind.TurnRate)!, ["x", "y", "z"], 1.0, "F5")),
        ("Location.csv", Fixes(log.Of(SensorKind.Speed)!, log.Of(SensorKind.Position)!)),
    ];

    // Both are written at one instant.
    private static string Fixes(SensorTrack speed, SensorTrack position)
    {
        var text = new StringBuilder("time;speed (km/h);latitude (°);longitude (°);accuracy (m)\r\n");
        for (var i = 0; i < speed.Times.Length; i++)
        {
            text.Append(Stamp(speed.Times[i])).Append(';').AppendJoin(
                ';', Fix(position, i).Prepend(Invariant(3.6 * speed.Values[0][i], "F2")).Select(v => v.Replace('.', ','))).Append("\r\n");
        }

        return text.ToString();
    }

    private static string[] Fix(SensorTrack position, int i) =>
    [
        Invariant(In.Degrees.Of(position.Values[0][i]), "F7"), Invariant(In.Degrees.Of(position.Values[1][i]), "F7"),
        Invariant(position.Values[2][i], "F1"),
    ];

    private static string Stamp(double time)
    {
        const long day = 1_700_000_000_000_000_000L;
        return (day + (long)Math.Round(1e9 * time)).ToString(CultureInfo.InvariantCulture);
    }

    private static string Table(SensorTrack track, string[] names, double scale, string digits)
    {
        var text = new StringBuilder("time;").AppendJoin(';', names).Append("\r\n");
        for (var i = 0; i < track.Times.Length; i++)
        {
            text.Append(Stamp(track.Times[i])).Append(';');
            text.AppendJoin(';', track.Values.Select(v => Invariant(scale * v[i], digits).Replace('.', ','))).Append("\r\n");
        }

        return text.ToString();
    }

    private static string Invariant(double value, string digits) => value.ToString(digits, CultureInfo.InvariantCulture);
}
