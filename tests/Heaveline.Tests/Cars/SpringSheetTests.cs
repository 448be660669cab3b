using Heaveline.Cars;
using Heaveline.Worksheets;
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

    // 16 N/mm, from 260 mm on 28 N/mm, misread by a few newtons.
    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(9)]
    public void Two_rates_are_never_called_one(int count)
    {
        double[] lengths = [.. Enumerable.Range(0, count).Select(k => 0.310 - (0.1 * k / (count - 1)))];
        var sheet = Sheet(lengths, [.. lengths.Select((l, k) => TwoRates(l) + (0.6 * Slips[k % 7]))]);
        Assert.True(sheet.Bends || sheet.Shape == SpringShape.TwoRates, $"{sheet.Shape}, {sheet.Scatter}");
        Assert.DoesNotContain(sheet.Notes, n => n.Text.Contains("One rate describes", StringComparison.Ordinal));
        Assert.Equal(16000.0, sheet.Steps[0].Rate.Si, 1000.0);
        Assert.Equal(28000.0, sheet.Steps[^1].Rate.Si, 1000.0);
        if (count > 6)
        {
            Assert.Equal(SpringShape.TwoRates, sheet.Shape);
            Assert.Equal(0.26, sheet.CrossoverLength!.Value, 3e-3);
        }
    }

    // A tester's own steps: 15.5, 16, 23, 23, 23 N/mm.
    [Fact]
    public void Steps_are_shown_with_what_the_readings_leave_open()
    {
        double[] forces = [0.0, 310.0, 630.0, 1090.0, 1550.0, 2010.0];
        Amount<Length>[] lengths = [.. forces.Select((_, k) => new Amount<Length>(0.300 - (0.02 * k), new Doubt(0.0005)))];
        var sheet = SpringSheet.Of(lengths, [.. forces.Select(f => new Amount<Force>(f, new Doubt(5.0)))]);
        Assert.True(sheet.Bends || sheet.Shape != SpringShape.Straight);
        Assert.Equal([15500.0, 16000.0, 23000.0, 23000.0, 23000.0], sheet.Steps.Select(s => Math.Round(s.Rate.Si, 6)));
        // Two forces to 5 N and two lengths to half a millimetre at 23 N/mm over 20 mm.
        Assert.Equal(Math.Sqrt(2.0 * (25.0 + (11.5 * 11.5))) / 0.02, sheet.Steps[^1].Rate.Doubt.HalfWidth, 1e-6);
    }

    /// <summary>Straight springs misread at random are called bent about once in 20 times by each of two shapes, and two-rated hardly ever.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(12)]
    public void A_straight_spring_is_seldom_called_bent(int count)
    {
        const int Springs = 400;
        var chance = new Random(7);
        double Normal() => Math.Sqrt(-2.0 * Math.Log(1.0 - chance.NextDouble())) * Math.Cos(2.0 * Math.PI * chance.NextDouble());
        double[] lengths = [.. Enumerable.Range(0, count).Select(k => 0.30 - (0.1 * k / (count - 1)))];
        var (bent, wrong) = (0, 0);
        for (var k = 0; k < Springs; k++)
        {
            var sheet = Sheet(lengths, [.. lengths.Select(l => (24000.0 * (0.33 - l)) + (6.0 * Normal()))]);
            bent += sheet.Bends ? 1 : 0;
            wrong += sheet.Shape != SpringShape.Straight ? 1 : 0;
        }

        Assert.InRange(bent / (double)Springs, 0.0, 0.20);
        Assert.InRange(wrong / (double)Springs, 0.0, 0.05);
    }

    private static double TwoRates(double length) => (16000.0 * (0.330 - length)) + (12000.0 * Math.Max(0.0, 0.260 - length));

    private static SpringSheet Sheet(double[] lengths, double[] forces) =>
        SpringSheet.Of([.. lengths.Select(l => new Amount<Length>(l))], [.. forces.Select(f => new Amount<Force>(f))]);

    private static Amount<Length> Inches(double inches) => new(0.0254 * inches);
}
