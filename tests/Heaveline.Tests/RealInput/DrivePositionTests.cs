using System.Globalization;
using System.Text;
using Heaveline.Drives;
using Heaveline.Files.Drives;

namespace Heaveline.Tests.RealInput;

/// <summary>
/// Positions in real logs. Where the logs that may be shared had any, they were taken out of them: the shuttle's is reckoned anew here from its own
/// satellites' speed and bearing.
/// </summary>
public class DrivePositionTests
{
    [Fact]
    public void Columns_of_a_position_that_are_blank_are_no_position_and_no_fault()
    {
        var reading = LogFile.Load([SharedData.Require("phone-10hz-unit-headers", "log.csv")], TestContext.Current.CancellationToken);
        Assert.Empty(reading.Refusals);
        Assert.Null(reading.Log!.Of(SensorKind.Position));
        Assert.DoesNotContain(reading.Log.Story, s => s.About is "position" or "position-fixes");
    }

    [Fact]
    public void The_shuttles_path_runs_as_its_satellites_say_it_was_driven()
    {
        string[] lines = File.ReadAllLines(SharedData.Require("shuttle-200hz-a", "gps.csv"));
        var fixes = lines.Skip(1).Select(l => l.Split(',').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        var text = new StringBuilder(lines[0]).Append(",lat,lon\n");
        var (latitude, longitude) = (0.5, -30.0);
        const double degree = Math.PI * GroundPlace.EarthRadius / 180.0;
        for (var i = 0; i < fixes.Length; i++)
        {
            if (i > 0)
            {
                var way = (fixes[i][1] - fixes[i - 1][1]) * 0.5 * (fixes[i][2] + fixes[i - 1][2]) / degree;
                var (sine, cosine) = Math.SinCos(fixes[i][3] * Math.PI / 180.0);
                (latitude, longitude) = (latitude + (way * cosine), longitude + (way * sine));
            }

            text.Append(CultureInfo.InvariantCulture, $"{lines[i + 1]},{latitude:F8},{longitude:F8}\n");
        }

        var reading = LogFile.Read(
            [
                .. new[] { "acc.csv", "gyro.csv" }.Select(f => (f, File.ReadAllBytes(SharedData.Require("shuttle-200hz-a", f)))),
                ("gps.csv", Encoding.UTF8.GetBytes(text.ToString())),
            ],
            TestContext.Current.CancellationToken);
        var drive = Drive.Of(reading.Log!, TestContext.Current.CancellationToken);
        var path = drive.Path!;
        var (odometer, chords) = (0.0, 0.0);
        var turned = new List<double>();
        var second = (int)drive.Rate;
        for (var i = 0; i + second < path.East.Length; i += second)
        {
            if (double.IsNaN(path.East[i]) || double.IsNaN(path.East[i + second]))
            {
                continue;
            }

            var (east, north) = (path.East[i + second] - path.East[i], path.North[i + second] - path.North[i]);
            chords += Math.Sqrt((east * east) + (north * north));
            odometer += Enumerable.Range(i, second).Average(k => drive.Speed[k]) * second / drive.Rate;
            if (drive.Speed[i] > 5.0 && path.At(drive.Time(i)) is { Heading: var heading } && double.IsFinite(heading))
            {
                var lag = drive.Mount.SpeedLag ?? 0.0;
                var said = fixes.MinBy(f => Math.Abs(f[1] - drive.Time(i) - lag))![3];
                turned.Add(Math.Abs(Math.IEEERemainder(heading - ((90.0 - said) * Math.PI / 180.0), 2.0 * Math.PI)));
            }
        }

        Assert.True(turned.Count > 100);
        turned.Sort();
        Assert.InRange(turned[turned.Count / 2], 0.0, 0.1);
        Assert.Equal(1.0, chords / odometer, 0.03);
    }
}
