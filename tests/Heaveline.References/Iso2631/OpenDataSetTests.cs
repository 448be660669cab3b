using System.Globalization;
using Heaveline.Measures.Comfort;
using Heaveline.Tests;

namespace Heaveline.References.Iso2631;

/// <summary>
/// The weighting tables of an open data set (mechmotum/baby-vibration, see source.md). Three of its cells are transcription errors and must not be
/// reproduced: Wd at 2 Hz (factor and decibels), Wd at 10 Hz (factor), We at 63 Hz (decibels). All other cells agree.
/// </summary>
public class OpenDataSetTests
{
    private const string Folder = "wbv-weights-and-results-a";

    public static TheoryData<string, string, string, int, string> Columns => new()
    {
        { "weights-01.csv", "vertical_acceleration_z", "Wk", 37, "" },
        { "weights-01.csv", "vertical_acceleration_z_db", "Wk", 37, "" },
        { "weights-01.csv", "translational_acceleration_xy", "Wd", 37, "2;10" },
        { "weights-01.csv", "translational_acceleration_xy_db", "Wd", 37, "2" },
        { "weights-01.csv", "motion_sickness_z", "Wf", 24, "" },
        { "weights-01.csv", "motion_sickness_z_db", "Wf", 24, "" },
        { "weights-02.csv", "wc", "Wc", 37, "" },
        { "weights-02.csv", "wc_db", "Wc", 37, "" },
        { "weights-02.csv", "rotation_acceleration_xyz", "We", 37, "" },
        { "weights-02.csv", "rotation_acceleration_xyz_db", "We", 37, "63" },
        { "weights-02.csv", "wj", "Wj", 37, "" },
        { "weights-02.csv", "wj_dB", "Wj", 37, "" },
    };

    [Theory, MemberData(nameof(Columns))]
    public void Every_cell_agrees_but_the_three_transcription_errors(string file, string column, string name, int cells, string wrong)
    {
        var table = PublishedTable.Read(SharedData.Require(Folder, file));
        var weighting = Weightings.All.Single(w => w.Name == name);
        var decibels = column.EndsWith("_db", StringComparison.OrdinalIgnoreCase);
        var errors = wrong
            .Split(';', StringSplitOptions.RemoveEmptyEntries).Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToHashSet();
        List<string> disagreeing = [];
        var seen = 0;
        foreach (var row in table.Rows)
        {
            var frequency = table.Number(row, "frequency_hz")!.Value;
            var printed = table.Number(row, column)!.Value;
            if (printed == (decibels ? -90.0 : 0.0))
            {
                continue; // The data set's filling where the standard prints nothing.
            }

            seen++;
            var factor = weighting.Factor(frequency);
            var agrees = decibels
                ? Math.Abs((20.0 * Math.Log10(factor)) - printed) < 0.1
                : Math.Abs((1000.0 * factor) - printed) < (0.01 * printed) + HalfDigit(printed);
            if (agrees == errors.Contains(frequency))
            {
                disagreeing.Add(
                    $"{name} {column} at {frequency} Hz: {printed}, function {(decibels ? 20.0 * Math.Log10(factor) : 1000.0 * factor):G5}");
            }
        }

        Assert.Equal(cells, seen);
        Assert.True(disagreeing.Count == 0, string.Join(Environment.NewLine, disagreeing));
    }

    // Printed to two decimals below 10 (three below 0.1), to one below 100, whole above.
    private static double HalfDigit(double printed) => printed switch
    {
        < 0.1 => 0.0005,
        < 10.0 => 0.005,
        < 100.0 => 0.05,
        _ => 0.5,
    };
}
