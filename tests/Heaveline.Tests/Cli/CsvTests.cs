using System.Globalization;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.Cli;

public class CsvTests
{
    [Fact]
    public void Csv_reads_back_with_units_and_gives_the_numbers_of_the_table()
    {
        using var scratch = new Scratch();
        var json = new AnswerJson(Spoken.Of(
            "pass", "examples/garage/fern-saloon.yaml", "--load", "four up with luggage", "--csv", scratch["traces.csv"], "--json"));
        var columns = Columns(scratch["traces.csv"]);
        Assert.All(columns.Keys, header => Assert.Matches(@"^[^\[]+ \[(s|mm|deg|deg/s|rad/s2|m/s2|N)\]$", header));
        Assert.All(columns.Values, values => Assert.Equal(columns["time [s]"].Length, values.Length));

        var time = columns["time [s]"];
        Assert.Equal(json.Value("recorded"), time[^1] - time[0], 1e-6);
        // The table's peaks lie between two samples: the largest sample is a little less.
        Assert.InRange(columns["driver vertical acceleration [m/s2]"].Max(Math.Abs) / json.Value("driver-peak-vertical"), 0.999, 1.0 + 1e-6);
        Assert.InRange(columns["rear left travel, bump [mm]"].Max() / json.Value("rear-bump"), 0.999, 1.0 + 1e-6);
        Assert.Equal(json.Value("lamp-highest"), 1.2 + (100.0 * Math.PI / 180.0 * columns["pitch, nose-down [deg]"].Min()) - Attitude(), 2e-4);
    }

    [Fact]
    public void Csv_of_a_motorcycle_has_no_roll_and_two_wheels()
    {
        using var scratch = new Scratch();
        Assert.Equal(0, Spoken.Of("pass", "examples/garage/plover-motorcycle.yaml", "--csv", scratch["traces.csv"]).Code);
        var headers = Columns(scratch["traces.csv"]).Keys;
        Assert.DoesNotContain(headers, h => h.StartsWith("roll", StringComparison.Ordinal));
        Assert.Equal(2, headers.Count(h => h.EndsWith("tyre load [N]", StringComparison.Ordinal)));
    }

    // How far the load lifts the beam before the hump does, in percent.
    private static double Attitude()
    {
        var described = new AnswerJson(Spoken.Of("describe", "examples/garage/fern-saloon.yaml", "--json"));
        return described.Value("lamp-drop") - described.Value("lamp-drop", column: 2);
    }

    private static Dictionary<string, double[]> Columns(string file)
    {
        var lines = File.ReadAllLines(file);
        string[] headers = [.. Regex.Matches(lines[0], "\"([^\"]*)\"|([^,]+)").Select(m => m.Groups[1].Success ? m.Groups[1].Value : m.Value)];
        double[][] rows = [.. lines.Skip(1).Select(l => l.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray())];
        Assert.All(rows, row => Assert.Equal(headers.Length, row.Length));
        return headers.Select((h, k) => (h, k)).ToDictionary(c => c.h, c => rows.Select(row => row[c.k]).ToArray());
    }
}
