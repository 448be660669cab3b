using Heaveline.Measures.Comfort;

namespace Heaveline.References.Iso2631;

/// <summary>ISO 2631-1:1997 Tables 3 and 4 at the nominal frequencies, read second-hand; see source.md.</summary>
public class WeightingTableTests
{
    private static readonly PublishedTable _table = PublishedTable.Of("Iso2631", "tables-3-and-4.csv");

    public static TheoryData<string, int> Columns => new()
    {
        { "Wk", 37 }, { "Wd", 37 }, { "Wc", 30 }, { "We", 30 }, { "Wj", 30 }, { "Wf", 24 },
    };

    [Theory, MemberData(nameof(Columns))]
    public void Factors_at_the_nominal_frequencies_match_the_tables_but_for_the_misprints(string name, int cells)
    {
        var weighting = Weightings.All.Single(w => w.Name == name);
        var worst = (Error: 0.0, Frequency: 0.0);
        var seen = 0;
        foreach (var row in _table.Rows)
        {
            var frequency = _table.Number(row, "frequency_hz")!.Value;
            if (_table.Number(row, name) is not { } printed)
            {
                continue;
            }

            seen++;
            var error = Math.Abs((1000.0 * weighting.Factor(frequency) / printed) - 1.0);
            if ((name, frequency) is ("Wd", 10.0) or ("Wj", 4.0))
            {
                Assert.True(error > 0.04, $"the misprint of {name} at {frequency} Hz must not be reproduced");
                continue;
            }

            worst = error > worst.Error ? (error, frequency) : worst;
        }

        TestContext.Current.SendDiagnosticMessage($"{name}: worst {100.0 * worst.Error:G3} % at {worst.Frequency:G4} Hz");
        Assert.Equal(cells, seen);
        Assert.True(worst.Error < 0.01, $"{name}: {100.0 * worst.Error:G3} % at {worst.Frequency:G4} Hz");
    }

    /// <summary>
    /// The misprint of Wd at 10 Hz is settled by the decibels printed beside it, −13.91 dB (recalled for the standard, read in the open data set).
    /// </summary>
    [Fact]
    public void Wd_at_10_Hz_agrees_with_its_decibels_and_not_with_its_printed_factor() =>
        Assert.Equal(-13.91, 20.0 * Math.Log10(Weightings.Wd.Factor(10.0)), 5e-3);

    /// <summary>Computed with SciPy from the parameters, four to five digits.</summary>
    [Theory]
    [InlineData("Wk", 6.171, 1.0545)]
    [InlineData("Wd", 1.086, 1.0126)]
    [InlineData("Wf", 0.1744, 1.0143)]
    [InlineData("Wc", 3.731, 1.0243)]
    [InlineData("We", 0.715, 0.9494)]
    [InlineData("Wj", 10.14, 1.0302)]
    public void Peaks_stand_where_they_were_computed_independently(string name, double frequency, double factor)
    {
        var weighting = Weightings.All.Single(w => w.Name == name);
        Assert.Equal(factor, weighting.Factor(frequency), 5e-5);
        Assert.True(weighting.Factor(frequency) > weighting.Factor(0.98 * frequency));
        Assert.True(weighting.Factor(frequency) > weighting.Factor(1.02 * frequency));
    }

    /// <summary>Phases in degrees at 0.5, 1, 2, 4, 8, 16, 31.5, 80 Hz, computed with SciPy; half of the last digit.</summary>
    [Theory]
    [InlineData("Wk", new[] { 74.71, 40.06, 36.48, 20.06, -20.14, -62.41, -98.16, -155.79 })]
    [InlineData("Wd", new[] { 63.04, 13.09, -30.20, -65.06, -83.54, -96.78, -113.14, -161.10 })]
    public void Phases_match_those_computed_independently(string name, double[] degrees)
    {
        double[] frequencies = [0.5, 1.0, 2.0, 4.0, 8.0, 16.0, 31.5, 80.0];
        var weighting = Weightings.All.Single(w => w.Name == name);
        for (var i = 0; i < degrees.Length; i++)
        {
            Assert.Equal(degrees[i], weighting.At(frequencies[i]).Phase * 180.0 / Math.PI, 5.1e-3);
        }
    }
}
