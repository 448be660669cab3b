using Heaveline.Cars;
using Heaveline.Cars.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cars;

public class SpringSheetTests
{
    private static readonly double[] Lengths = [0.300, 0.285, 0.270, 0.255, 0.240, 0.225, 0.210];

    // A tester's misreadings, N, fixed: no pattern, sum near zero.
    private static readonly double[] Slips = [6, -9, 4, 8, -7, -3, 2];

    /// <summary>Worked example of a workshop page: 0.625 in wire, 5.00 in mean diameter, 10 coils, G 11.25e6 psi make 171.66 lb/in.</summary>
    [Fact]
    public void A_rate_from_the_wire_agrees_with_the_workshop_example()
    {
        var coil = new CoilDimensions
        {
            Wire = Inches(0.625),
            MeanDiameter = Inches(5.0),
            ActiveCoils = new(10.0),
            ShearModulus = QuantityText.Parse<Pressure>("11.25e6 psi").Amount,
        };
        Assert.Equal(171.66, Units.Of<Stiffness>("lb/in").FromSi(coil.Rate), 0.005);
    }

    [Fact]
    public void A_straight_spring_gives_its_rate_inside_its_interval_and_its_free_length()
    {
        var sheet = Sheet(Lengths, [.. Lengths.Select((l, k) => (24000.0 * (0.330 - l)) + Slips[k])]);
        Assert.Equal(SpringShape.Straight, sheet.Shape);
        Assert.Equal(24000.0, sheet.Rate.Si, sheet.Rate.Doubt.HalfWidth);
        Assert.InRange(sheet.Rate.Doubt.HalfWidth, 50.0, 400.0);
        Assert.Equal(0.330, sheet.FreeLength.Si, sheet.FreeLength.Doubt.HalfWidth);
        Assert.Equal(24000.0 * 0.08, sheet.ForceAt(0.250), 10.0);
    }

    // Two springs in a row, 20 and 40 N/mm, the softer one binding after 40 mm of its own travel: 13.33 N/mm, then 40 N/mm, crossing at 800 N.
    [Fact]
    public void Two_springs_in_a_row_show_both_rates_and_the_crossover()
    {
        double Force(double x) => x < 0.060 ? 40000.0 / 3.0 * x : 800.0 + (40000.0 * (x - 0.060));
        double[] lengths = [.. Enumerable.Range(0, 12).Select(k => 0.40 - (0.01 * k))];
        var sheet = Sheet(lengths, [.. lengths.Select((l, k) => Force(0.40 - l) + (0.3 * Slips[k % 7]))]);
        Assert.Equal(SpringShape.TwoRates, sheet.Shape);
        Assert.Equal(0.34, sheet.CrossoverLength!.Value, 1e-3);
        Assert.Equal(800.0, sheet.CrossoverForce!.Value, 10.0);
        Assert.Equal(40000.0 / 3.0, sheet.EndRates[0].Si, 250.0);
        Assert.Equal(40000.0, sheet.EndRates[1].Si, 500.0);
    }

    [Fact]
    public void A_spring_that_stiffens_steadily_is_called_progressive()
    {
        double[] lengths = [.. Enumerable.Range(0, 12).Select(k => 0.40 - (0.01 * k))];
        double Force(double x) => (15000.0 * x) + (0.5 * 150000.0 * x * x);
        var sheet = Sheet(lengths, [.. lengths.Select((l, k) => Force(0.40 - l) + (0.3 * Slips[k % 7]))]);
        Assert.Equal(SpringShape.Progressive, sheet.Shape);
        Assert.Equal(15000.0 + (150000.0 * 0.055), sheet.RateAt(0.345), 100.0);
        Assert.Equal(15000.0 + (150000.0 * 0.11), sheet.EndRates[1].Si, sheet.EndRates[1].Doubt.HalfWidth + 1.0);
    }

    [Fact]
    public void Compressions_given_as_lengths_are_refused() =>
        Assert.Contains(
            "gets shorter",
            Assert.Throws<RefusedValueException>(() => Sheet([0.0, 0.02, 0.04], [0.0, 500.0, 1000.0])).Message,
            StringComparison.Ordinal);

    // The scatter of these pairs is nothing; the scale is said to be good to ± 20 N: U(k) = 20/√Σ(x − x̄)², Σ over 0, 20, 40, 60 mm: 2000 mm².
    [Fact]
    public void What_is_said_of_the_readings_counts_where_their_scatter_says_less()
    {
        Amount<Length>[] lengths = [new(0.30), new(0.28), new(0.26), new(0.24)];
        var sheet = SpringSheet.Of(lengths, [.. lengths.Select(l => new Amount<Force>(20000.0 * (0.33 - l.Si), new Doubt(20.0)))]);
        Assert.Equal(20.0 / Math.Sqrt(2e-3), sheet.Rate.Doubt.HalfWidth, 1e-6);
        Assert.True(sheet.FreeLength.Doubt.HalfWidth > 1e-3);
    }

    private static SpringSheet Sheet(double[] lengths, double[] forces) =>
        SpringSheet.Of([.. lengths.Select(l => new Amount<Length>(l))], [.. forces.Select(f => new Amount<Force>(f))]);

    private static Amount<Length> Inches(double inches) => new(0.0254 * inches);
}
