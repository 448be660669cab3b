using System.Globalization;
using System.Text;
using Heaveline.Drives;

namespace Heaveline.Tests.Files.Drives;

/// <summary>A log as one text: acceleration, turn rate and the last fix of the speed in every row, in any units.</summary>
internal static class WrittenLog
{
    public static string Of(
        Log log, (string Name, double Scale)? force = null, (string Name, double Scale)? turn = null, (string Name, double Scale)? speed = null)
    {
        var (acceleration, rate) = (log.Of(SensorKind.Acceleration)!, log.Of(SensorKind.TurnRate)!);
        var fixes = log.Of(SensorKind.Speed)!;
        var ((f, fs), (t, ts), (v, vs)) = (force ?? ("(m/s²)", 1.0), turn ?? ("(rad/s)", 1.0), speed ?? ("(m/s)", 1.0));
        var text = new StringBuilder($"time (s),accel x {f},accel y {f},accel z {f},gyro x {t},gyro y {t},gyro z {t},speed {v}\n");
        var k = 0;
        for (var i = 0; i < acceleration.Times.Length; i++)
        {
            while (k + 1 < fixes.Times.Length && fixes.Times[k + 1] <= acceleration.Times[i])
            {
                k++;
            }

            text.Append(acceleration.Times[i].ToString("F7", CultureInfo.InvariantCulture));
            foreach (var value in acceleration.Values
                .Select(c => fs * c[i]).Concat(rate.Values.Select(c => ts * c[i])).Append(vs * fixes.Values[0][k]))
            {
                text.Append(',').Append(value.ToString("G12", CultureInfo.InvariantCulture));
            }

            text.Append('\n');
        }

        return text.ToString();
    }
}
