using System.Globalization;
using System.Text;
using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Quantities;
using Heaveline.Tests.Drives;

namespace Heaveline.Tests.Files.Drives;

/// <summary>Latitude and longitude in a log: read in decimal degrees, by their names, or left out and said.</summary>
public class PositionTests
{
    private static readonly PlantedDrive Planted = new() { Length = 45.0 };

    [Fact]
    public void A_position_that_stands_in_every_row_is_read_fix_by_fix()
    {
        var log = Read(("log.csv", Whole("Latitude (°),Longitude (°),Horizontal Accuracy (m)", t => [Latitude(t), Longitude(t), 4.0])));
        var position = log.Of(SensorKind.Position)!;
        Assert.Equal(["Latitude (°)", "Longitude (°)", "Horizontal Accuracy (m)"], position.Columns);
        Assert.InRange(position.Times.Length, 44, 46);
        Assert.Equal(Latitude(7.0), In.Degrees.Of(position.Values[0][7]), 1e-9);
        Assert.Equal(Longitude(7.0), In.Degrees.Of(position.Values[1][7]), 1e-9);
        Assert.All(position.Values[2], a => Assert.Equal(4.0, a));
        Assert.Contains("position from 'Latitude (°)', 'Longitude (°)'", Told(log), StringComparison.Ordinal);
        Assert.False(log.Story.Single(s => s.About == "position").IsDoubtful);
        // Where somebody drove is not said.
        Assert.DoesNotContain(log.Story, s => s.Text.Contains("0.50", StringComparison.Ordinal) || s.Text.Contains("29.9", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("lat", "lon")]
    [InlineData("gps_lat", "gps_lng")]
    [InlineData("LOCATION Latitude : ", "LOCATION Longitude : ")]
    [InlineData("locationLatitude(WGS84)", "locationLongitude(WGS84)")]
    public void Columns_are_known_by_their_words(string latitude, string longitude)
    {
        var log = Read(("log.csv", Whole($"{latitude},{longitude}", t => [Latitude(t), Longitude(t)])));
        Assert.Equal(2, log.Of(SensorKind.Position)!.Values.Length);
    }

    [Fact]
    public void A_file_of_its_own_is_joined_by_its_clock_and_blank_accuracy_loses_no_fix()
    {
        var text = new StringBuilder("time (s),latitude,longitude,accuracy,speed (m/s)\n");
        foreach (var t in Planted.Fixes)
        {
            text.Append(Row([t, Latitude(t), Longitude(t)])).Append(t < 10.0 ? "," : ",6").Append(',').Append(Row([Planted.SpeedAt(t)])).Append('\n');
        }

        var written = new LogWriter().Apart;
        var log = Read((written[0].Name, written[0].Text), (written[1].Name, written[1].Text), ("Location.csv", text.ToString()));
        var position = log.Of(SensorKind.Position)!;
        Assert.Equal(("Location.csv", Planted.Fixes.Length), (position.File, position.Times.Length));
        Assert.NotNull(log.Of(SensorKind.Speed));
        Assert.Equal((double.NaN, 6.0), (position.Values[2][3], position.Values[2][20]));
    }

    [Fact]
    public void Fixes_at_nought_are_dropped_and_said()
    {
        var log = Read(("log.csv", Whole("lat,lon", t => t < 5.0 ? [0.0, 0.0] : [Latitude(t), Longitude(t)])));
        Assert.All(log.Of(SensorKind.Position)!.Values[0], l => Assert.NotEqual(0.0, l));
        Assert.Contains("rows at 0°, 0° are no fix", Told(log), StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_that_bear_each_others_names_are_put_right_and_said()
    {
        var log = Read(("log.csv", Whole("lat,lon", t => [Longitude(t) - 100.0, Latitude(t)])));
        var position = log.Of(SensorKind.Position)!;
        Assert.Equal(["lon", "lat"], position.Columns);
        Assert.Equal(Latitude(3.0), In.Degrees.Of(position.Values[0][3]), 1e-9);
        Assert.True(log.Story.Single(s => s.About == "position").IsDoubtful);
    }

    [Theory]
    [InlineData("4807.038,1131.000")]
    [InlineData("48°07'02\"N,11°31'00\"E")]
    public void Degrees_with_minutes_are_left_out_and_the_log_is_read_all_the_same(string cells)
    {
        var log = Read(("log.csv", Whole("lat,lon", _ => [], cells)));
        Assert.Null(log.Of(SensorKind.Position));
        Assert.Contains("no position in decimal degrees: left out", Told(log), StringComparison.Ordinal);
        Assert.NotNull(log.Of(SensorKind.Speed));
    }

    [Fact]
    public void Sideways_and_lengthways_in_g_are_no_position()
    {
        var log = Read(("log.csv", Whole("lat (g),long (g)", t => [0.1 * Math.Sin(t), 0.05])));
        Assert.Null(log.Of(SensorKind.Position));
    }

    [Fact]
    public void Who_wants_no_position_has_none()
    {
        var text = Whole("lat,lon", t => [Latitude(t), Longitude(t)]);
        var reading = LogFile.Read(
            [("log.csv", LogWriter.Bytes(text))], [Overruling.Of("position: none", out _)!], TestContext.Current.CancellationToken);
        Assert.Null(reading.Log!.Of(SensorKind.Position));
        Assert.DoesNotContain(reading.Log.Story, s => s.About == "position");
    }

    [Fact]
    public void Everything_else_of_a_log_is_read_as_without_its_position()
    {
        var (with, without) = (Read(("log.csv", Whole("lat,lon", t => [Latitude(t), Longitude(t)]))), Read(("log.csv", new LogWriter().Whole)));
        foreach (var kind in new[] { SensorKind.Acceleration, SensorKind.TurnRate, SensorKind.Speed })
        {
            Assert.Equal(without.Of(kind)!.Values[0], with.Of(kind)!.Values[0]);
        }
    }

    // A fix a second, northwards and eastwards at some metres a second.
    private static double Latitude(double t) => 0.5 + (4e-5 * Math.Floor(t));

    private static double Longitude(double t) => -30.0 + (6e-5 * Math.Floor(t));

    private static string Row(double[] values) => string.Join(',', values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)));

    private static string Whole(string names, Func<double, double[]> fix, string? cells = null)
    {
        var lines = new LogWriter { Drive = Planted }.Whole.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        var times = Planted.Instants;
        return string.Join('\n', lines.Select((l, i) => $"{l},{(i == 0 ? names : cells ?? Row(fix(Math.Max(times[i - 1], 0.0))))}"));
    }

    private static string Told(Log log) => string.Join('\n', log.Story.Where(s => s.About == "position").Select(s => s.Text));

    private static Log Read(params (string Name, string Text)[] files)
    {
        var reading = LogFile.Read([.. files.Select(f => (f.Name, LogWriter.Bytes(f.Text)))], TestContext.Current.CancellationToken);
        Assert.Empty(reading.Refusals);
        return reading.Log!;
    }
}
