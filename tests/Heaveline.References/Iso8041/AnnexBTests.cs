using Heaveline.Measures.Comfort;

namespace Heaveline.References.Iso8041;

/// <summary>ISO 8041-1:2017 Annex B and reference-frequency values, read second-hand; see source.md.</summary>
public class AnnexBTests
{
    private static readonly PublishedTable _table = PublishedTable.Of("Iso8041", "annex-b.csv");
    private static readonly PublishedTable _phases = PublishedTable.Of("Iso8041", "annex-b-phases.csv");

    public static TheoryData<string, int> Columns => new()
    {
        { "Wk", 37 }, { "Wd", 37 }, { "Wc", 37 }, { "We", 37 }, { "Wj", 37 }, { "Wf", 21 },
    };

    /// <summary>Printed to four digits; 0.1 %.</summary>
    [Theory, MemberData(nameof(Columns))]
    public void Factors_at_the_true_centres_match_annex_B(string name, int cells)
    {
        var weighting = Weightings.All.Single(w => w.Name == name);
        var worst = (Error: 0.0, Frequency: 0.0);
        var seen = 0;
        foreach (var row in _table.Rows)
        {
            if (_table.Number(row, name) is not { } printed)
            {
                continue;
            }

            var frequency = Math.Pow(10.0, _table.Number(row, "n")!.Value / 10.0);
            var error = Math.Abs((weighting.Factor(frequency) / printed) - 1.0);
            worst = error > worst.Error ? (error, frequency) : worst;
            seen++;
        }

        TestContext.Current.SendDiagnosticMessage($"{name}: worst {100.0 * worst.Error:G3} % at {worst.Frequency:G4} Hz");
        Assert.Equal(cells, seen);
        Assert.True(worst.Error < 1e-3, $"{name}: {100.0 * worst.Error:G3} % at {worst.Frequency:G4} Hz");
    }

    public static TheoryData<string, int> PhaseColumns => new()
    {
        { "Wk", 37 }, { "Wd", 37 }, { "Wc", 37 }, { "We", 37 }, { "Wj", 37 }, { "Wb", 37 }, { "Wf", 21 },
    };

    /// <summary>
    /// Every phase of annex B at the true centre 10^(n/10) Hz, on whichever turn it is printed: within the rounding of its four digits.
    /// </summary>
    [Theory, MemberData(nameof(PhaseColumns))]
    public void Phases_at_the_true_centres_match_annex_B(string name, int cells)
    {
        var weighting = Weightings.All.Single(w => w.Name == name);
        var seen = 0;
        foreach (var row in _phases.Rows)
        {
            if (_phases.Number(row, name) is not { } printed)
            {
                continue;
            }

            var n = _phases.Number(row, "n")!.Value;
            var degrees = weighting.At(Math.Pow(10.0, n / 10.0)).Phase * 180.0 / Math.PI;
            var digit = Math.Pow(10.0, Math.Floor(Math.Log10(Math.Abs(printed))) - 3.0);
            Assert.True(
                Math.Abs(Math.IEEERemainder(degrees - printed, 360.0)) <= 0.51 * digit,
                $"{name}, n = {n}: printed {printed}, found {degrees:F4}");
            seen++;
        }

        Assert.Equal(cells, seen);
    }

    /// <summary>At 100 rad/s, Wf at 2.5 rad/s; half of the last printed digit.</summary>
    [Theory]
    [InlineData("Wk", 100.0, 0.7718, 5e-5)]
    [InlineData("Wb", 100.0, 0.8126, 5e-5)]
    [InlineData("Wc", 100.0, 0.5145, 5.1e-5)]
    [InlineData("Wd", 100.0, 0.1261, 5e-5)]
    [InlineData("We", 100.0, 0.06287, 5e-6)]
    [InlineData("Wj", 100.0, 1.019, 5e-4)]
    [InlineData("Wf", 2.5, 0.3888, 5.1e-5)]
    public void Factors_at_the_reference_frequency_match(string name, double angular, double printed, double digit)
    {
        var weighting = Weightings.All.Single(w => w.Name == name);
        Assert.Equal(printed, weighting.Factor(angular / (2.0 * Math.PI)), digit);
    }
}
