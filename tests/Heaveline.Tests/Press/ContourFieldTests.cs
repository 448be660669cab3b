using Heaveline.Press.Curves;
using Heaveline.Press.Paper;

namespace Heaveline.Tests.Press;

public class ContourFieldTests
{
    private static readonly double[] Xs = [.. Enumerable.Range(0, 41).Select(i => i * 2.0)];

    private static readonly double[] Ys = [.. Enumerable.Range(0, 31).Select(j => 60.0 - (j * 2.0))];

    /// <summary>
    /// On r² + … the values run straight between nodes h apart, so that a line may miss the circle by h²·f″/(8·|∇f|) at most, the bound of linear
    /// interpolation [any textbook of numerical analysis, e.g. Burden and Faires, interpolation error]; here f = r, f″ ≤ 1/r.
    /// </summary>
    [Theory]
    [InlineData(8.0)]
    [InlineData(20.0)]
    [InlineData(33.0)]
    public void A_contour_of_a_cone_lies_on_its_circle_within_the_error_of_straight_edges(double radius)
    {
        var lines = Field((x, y) => Math.Sqrt(((x - 40.0) * (x - 40.0)) + ((y - 31.0) * (y - 31.0)))).Lines(radius);
        Assert.NotEmpty(lines);
        const double H = 2.0;
        Assert.All(lines.SelectMany(line => line), spot => Assert.InRange(
            Math.Sqrt(((spot.X - 40.0) * (spot.X - 40.0)) + ((spot.Y - 31.0) * (spot.Y - 31.0))) - radius,
            -H * H / (8.0 * (radius - H)),
            H * H / (8.0 * (radius - H))));
    }

    [Fact]
    public void The_region_inside_a_circle_has_its_area()
    {
        // π r² of a disc within the error of a polygon with edges of about one cell.
        var loops = Field((x, y) => -Math.Sqrt(((x - 40.0) * (x - 40.0)) + ((y - 31.0) * (y - 31.0)))).Regions(-20.0);
        var loop = Assert.Single(loops);
        Assert.False(loop.IsHole);
        Assert.Equal(Math.PI * 400.0, loop.Area, 0.005 * Math.PI * 400.0);
        var hole = Field((x, y) => Math.Sqrt(((x - 40.0) * (x - 40.0)) + ((y - 31.0) * (y - 31.0)))).Regions(20.0);
        Assert.Single(hole, one => one.IsHole && Math.Abs(one.Area - (Math.PI * 400.0)) < 0.005 * Math.PI * 400.0);
        Assert.Single(hole, one => !one.IsHole && Math.Abs(one.Area - (80.0 * 60.0)) < 1e-9);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Every_line_is_closed_or_ends_at_the_border_of_the_field(int seed)
    {
        var random = new Random(seed);
        var values = Enumerable.Range(0, Xs.Length * Ys.Length).Select(_ => random.NextDouble()).ToArray();
        foreach (var missing in Enumerable.Range(0, 40))
        {
            values[random.Next(values.Length)] = double.NaN;
        }

        var field = new ContourField(Xs, Ys, values);
        foreach (var level in new[] { 0.1, 0.5, 0.9 })
        {
            var lines = field.Lines(level);
            Assert.NotEmpty(lines);
            foreach (var line in lines.Where(line => line[0] != line[^1]))
            {
                Assert.All(new[] { line[0], line[^1] }, end => Assert.True(OnBorder(field, end), $"{end} at level {level}"));
            }

            Assert.All(field.Regions(level), loop => Assert.Equal(loop.Corners[0], loop.Corners[^1]));
        }
    }

    [Fact]
    public void The_regions_of_all_levels_share_out_the_whole_field()
    {
        // Each cell of the field belongs to exactly one band: the areas of the bands add up, and a region never grows with its level.
        var random = new Random(4);
        var values = Enumerable.Range(0, Xs.Length * Ys.Length).Select(_ => random.NextDouble()).ToArray();
        var field = new ContourField(Xs, Ys, values);
        double Area(double level) => field.Regions(level).Sum(loop => loop.IsHole ? -loop.Area : loop.Area);
        Assert.Equal(80.0 * 60.0, Area(double.NegativeInfinity), 1e-6);
        var areas = new[] { 0.0, 0.2, 0.4, 0.6, 0.8, 1.0 }.Select(Area).ToArray();
        Assert.Equal(80.0 * 60.0, areas[0], 1e-6);
        Assert.Equal(0.0, areas[^1], 1e-6);
        Assert.All(areas.Zip(areas.Skip(1)), pair => Assert.True(pair.Second < pair.First));

        // The share of a symmetric random field above its middle is a half, within what 1271 independent nodes leave open (three times 1/√1271/2).
        Assert.InRange(Area(0.5) / 4800.0, 0.5 - 0.042, 0.5 + 0.042);
    }

    /// <summary>
    /// f = x·y has its saddle at level 0 in the middle of a cell of nodes ±1: f above 0 joins nowhere, below 0 it joins [asymptotic decider].
    /// </summary>
    [Theory]
    [InlineData(0.2, 2)]
    [InlineData(-0.2, 1)]
    public void A_saddle_is_joined_or_parted_as_the_bilinear_surface_is(double level, int regions)
    {
        var field = new ContourField([-1.0, 1.0], [-1.0, 1.0], [1.0, -1.0, -1.0, 1.0]);
        Assert.Equal(regions, field.Regions(level).Count);
        Assert.Equal(2, field.Lines(level).Count);

        // Off the centre the saddle value differs from the mean of the corners: (3·1 − 0·0)/4 = 0.75 against 1.
        var skew = new ContourField([-1.0, 1.0], [-1.0, 1.0], [3.0, 0.0, 0.0, 1.0]);
        Assert.Equal(2, skew.Regions(0.9).Count);
        Assert.Single(skew.Regions(0.7));
    }

    [Fact]
    public void Values_between_nodes_are_bilinear_and_missing_outside()
    {
        var field = new ContourField([0.0, 2.0], [4.0, 0.0], [0.0, 2.0, 4.0, 6.0]);
        Assert.Equal(3.0, field.At(1.0, 2.0), 12);
        Assert.Equal(5.5, field.At(2.0, 0.5), 12);
        Assert.Equal(double.NaN, field.At(2.1, 1.0));
        Assert.Equal(double.NaN, new ContourField([0.0, 1.0], [0.0, 1.0], [0.0, 1.0, double.NaN, 3.0]).At(0.9, 0.1));
    }

    [Fact]
    public void A_line_behind_a_number_has_a_gap_as_wide_as_the_number()
    {
        var runs = CutOut.Of([new(0, 5), new(10, 5), new(20, 5)], [new Box(4, 0, 12, 10)]);
        Assert.Equal(2, runs.Count);
        Assert.Equal([new Spot(0, 5), new Spot(4, 5)], runs[0]);
        Assert.Equal([new Spot(12, 5), new Spot(20, 5)], runs[1]);
        Assert.Empty(CutOut.Of([new(5, 5), new(6, 6)], [new Box(4, 0, 12, 10)]));
    }

    private static ContourField Field(Func<double, double, double> of) => new(Xs, Ys, [.. Ys.SelectMany(y => Xs.Select(x => of(x, y)))]);

    // On the border one of the four quarter cells around a place has no value.
    private static bool OnBorder(ContourField field, Spot at) =>
        new[] { (-1e-6, -1e-6), (1e-6, -1e-6), (-1e-6, 1e-6), (1e-6, 1e-6) }.Any(by => double.IsNaN(field.At(at.X + by.Item1, at.Y + by.Item2)));
}
