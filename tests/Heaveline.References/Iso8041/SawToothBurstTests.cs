using Heaveline.Measures.Comfort;

namespace Heaveline.References.Iso8041;

/// <summary>
/// ISO 8041-1:2017 Tables 6, 8, 9, read second-hand, through the time-domain filters from rest; see source.md for signal and tolerance.
/// </summary>
public class SawToothBurstTests
{
    private const double Wide = 0.025;
    private const double Narrow = 0.008;
    private static readonly PublishedTable _table = PublishedTable.Of("Iso8041", "saw-tooth-bursts.csv");

    public static TheoryData<string, int> Weighted => new()
    {
        { "band", 24 }, { "Wk", 24 }, { "Wd", 24 }, { "Wc", 24 }, { "We", 24 }, { "Wj", 24 }, { "Wb", 24 }, { "band-low", 12 }, { "Wf", 12 },
    };

    [Theory, MemberData(nameof(Weighted))]
    public void Burst_readings_match_the_published_cells(string name, int cells)
    {
        var seen = 0;
        var worst = (Error: 0.0, Cell: "");
        List<string> missed = [];
        foreach (var row in _table.Rows.Where(row => row[0] == name))
        {
            var cycles = _table.Text(row, "cycles");
            var reading = Read(name, cycles);
            foreach (var (column, value) in Readings(reading))
            {
                if (_table.Number(row, column) is not { } printed)
                {
                    continue;
                }

                seen++;
                var error = (value / printed) - 1.0;
                if (Math.Abs(error) > Math.Abs(worst.Error))
                {
                    worst = (error, $"{cycles} cycles {column}");
                }

                if (!(Math.Abs(error) < Tolerance(name, cycles)))
                {
                    missed.Add($"{name}, {cycles} cycles, {column}: printed {printed}, found {value:G5}, {100.0 * error:F2} %");
                }
            }
        }

        TestContext.Current.SendDiagnosticMessage($"{name}: worst {100.0 * worst.Error:F2} % at {worst.Cell}");
        Assert.Equal(cells, seen);
        Assert.True(missed.Count == 0, string.Join(Environment.NewLine, missed));
    }

    private static double Tolerance(string name, string cycles) =>
        (name is "Wd" or "We" or "Wf" && cycles != "cont") ? Wide : Narrow;

    private static WeightedAcceleration Read(string name, string cycles) => name switch
    {
        "band" => WeightedAcceleration.From(SawTooth.WholeBody(cycles), Weightings.Wk.BandLimiting),
        "band-low" => WeightedAcceleration.From(SawTooth.LowFrequency(cycles), Weightings.Wf.BandLimiting),
        "Wf" => WeightedAcceleration.From(SawTooth.LowFrequency(cycles), Weightings.Wf),
        _ => WeightedAcceleration.From(SawTooth.WholeBody(cycles), Weightings.All.Single(w => w.Name == name)),
    };

    private static IEnumerable<(string Column, double Value)> Readings(WeightedAcceleration reading)
    {
        yield return ("rms", reading.Rms);
        yield return ("vdv", reading.VibrationDose);
        yield return ("mtvv_linear", reading.LinearMtvv);
        yield return ("mtvv_exponential", reading.ExponentialMtvv);
        yield return ("msdv", reading.MotionSicknessDose);
    }
}
