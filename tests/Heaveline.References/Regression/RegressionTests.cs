using Heaveline.Drives.Comparison;
using Heaveline.Numerics;

namespace Heaveline.References.Regression;

/// <summary>The mathematics of before and after against published data sets: source.md beside this.</summary>
public class RegressionTests
{
    private static readonly double[] NorrisY =
    [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0,
        888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];

    private static readonly double[] NorrisX =
    [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8,
        887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];

    private static readonly double[] PontiusY =
    [
        0.11019, 0.21956, 0.32949, 0.43899, 0.54803, 0.65694, 0.76562, 0.87487, 0.98292, 1.09146, 1.20001, 1.30822, 1.41599, 1.52399, 1.63194,
        1.73947, 1.84646, 1.95392, 2.06128, 2.16844, 0.11052, 0.22018, 0.32939, 0.43886, 0.54798, 0.65739, 0.76596, 0.87474, 0.98300, 1.09150,
        1.20004, 1.30818, 1.41613, 1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829,
    ];

    private static readonly double[][] Longley =
    [
        [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
        [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
        [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
        [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
        [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
        [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
        [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
        [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
        [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
        [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
        [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
        [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
        [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
        [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
        [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
        [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
    ];

    private static readonly double[] IowaAge = [46, 52, 39, 65, 54, 33, 49, 76, 71, 41, 58];
    private static readonly double[] Iowa = [181, 228, 182, 249, 259, 201, 121, 339, 224, 112, 189];

    private static readonly double[] NebraskaAge = [18, 44, 33, 78, 51, 43, 44, 58, 63, 19, 42, 30, 47, 58, 70, 67, 31, 21, 56];

    private static readonly double[] Nebraska = [137, 173, 177, 241, 225, 223, 190, 257, 337, 189, 214, 140, 196, 262, 261, 356, 159, 191, 197];

    [Fact]
    public void Norris_has_the_certified_line() => Certified(
        [.. NorrisX.Select(x => new[] { 1.0, x })],
        NorrisY,
        [-0.262323073774029, 1.00211681802045],
        [0.232818234301152, 0.429796848199937E-03],
        0.884796396144373,
        1e-9);

    [Fact]
    public void Pontius_has_the_certified_parabola() => Certified(
        [.. PontiusY.Select((_, i) => 150000.0 * ((i % 20) + 1)).Select(x => new[] { 1.0, x, x * x })],
        PontiusY,
        [0.673565789473684E-03, 0.732059160401003E-06, -0.316081871345029E-14],
        [0.107938612033077E-03, 0.157817399981659E-09, 0.486652849992036E-16],
        0.205177424076185E-03,
        1e-9);

    [Fact]
    public void Longley_has_the_certified_coefficients_though_its_columns_are_nearly_alike() => Certified(
        [.. Longley.Select(row => row.Select((x, k) => k == 0 ? 1.0 : x).ToArray())],
        [.. Longley.Select(row => row[0])],
        [
            -3482258.63459582, 15.0618722713733, -0.358191792925910E-01, -2.02022980381683, -1.03322686717359, -0.511041056535807E-01,
            1829.15146461355,
        ],
        [
            890420.383607373, 84.9149257747669, 0.334910077722432E-01, 0.488399681651699, 0.214274163161675, 0.226073200069370, 455.478499142212,
        ],
        304.854073561965,
        1e-8);

    [Fact]
    public void Two_groups_with_age_beside_them_differ_as_printed()
    {
        double[] sbp = [110, 118, 132, 140, 120, 128, 132, 138, 142, 150], age = [20, 25, 30, 35, 30, 35, 35, 40, 40, 45];
        // A tenth of both keeps exp within reach; difference and error scale, the slope does not.
        var fit = new ComparisonFit([.. sbp.Select((y, i) => Pass("all", y / 10.0, age[i] / 10.0, i >= 4, i))], isApart: false);
        var effect = fit.Effect("all", 0.9);
        Assert.Equal(-10.38095, 10.0 * effect.Log, 5e-6);
        Assert.Equal(1.64051, 10.0 * effect.StandardError, 5e-6);
        Assert.Equal(7, effect.Freedom);
        Assert.Equal(0.0004, effect.Probability, 5e-5);
        Assert.Equal(1.83689, 10.0 * fit.Scatter, 5e-6);
        var slope = Math.Log(fit.Level("all", Math.Exp(4.0), true, 0.9).Value) - Math.Log(fit.Level("all", Math.Exp(3.0), true, 0.9).Value);
        Assert.Equal(2.03810, slope, 5e-6);
    }

    [Fact]
    public void Cholesterol_adjusted_for_age_differs_as_Snedecor_and_Cochran_print_it()
    {
        List<double[]> rows = [.. IowaAge.Select(a => new[] { 1.0, 0.0, a }), .. NebraskaAge.Select(a => new[] { 1.0, 1.0, a })];
        var fit = new LeastSquares(rows, [.. Iowa, .. Nebraska]);
        Assert.Equal(28.7, fit.Coefficients[1], 0.05);
        var mean = IowaAge.Concat(NebraskaAge).Average();
        var (iowa, nebraska) = (Math.Pow(fit.StandardError(1.0, 0.0, mean), 2.0), Math.Pow(fit.StandardError(1.0, 1.0, mean), 2.0));
        Assert.Equal(195.5, fit.Coefficients[0] + (fit.Coefficients[2] * mean), 0.05);
        Assert.Equal(170.4, iowa, 0.05);
        Assert.Equal(97.4, nebraska, 0.05);
        Assert.Equal(-2.9, 0.5 * (iowa + nebraska - Math.Pow(fit.StandardError(0.0, 1.0, 0.0), 2.0)), 0.05);
        var crossed = new LeastSquares([.. rows.Select(r => new[] { r[0], r[1], r[2], r[1] * r[2] })], [.. Iowa, .. Nebraska]);
        var f = (fit.SumOfSquares - crossed.SumOfSquares) / (crossed.SumOfSquares / crossed.Freedom);
        Assert.Equal(0.5425, 1.0 - MathNet.Numerics.Distributions.FisherSnedecor.CDF(1, crossed.Freedom, f), 5e-5);
    }

    /// <summary>
    /// Seven of each and a thousandth of the ages, since from eight on, or from five where speeds lie far apart, a bump may bend with speed: the
    /// published model is straight. The change does not depend on the ages' unit.
    /// </summary>
    [Fact]
    public void Cholesterol_as_passes_of_two_drives_has_the_same_difference()
    {
        var fit = new ComparisonFit(
            [
                .. Iowa.Select((y, i) => Pass("all", y / 10.0, IowaAge[i] / 1000.0, false, i)).Take(7),
                .. Nebraska.Select((y, i) => Pass("all", y / 10.0, NebraskaAge[i] / 1000.0, true, i)).Take(7),
            ],
            isApart: false);
        List<double[]> rows = [.. IowaAge.Take(7).Select(a => new[] { 1.0, 0.0, a }), .. NebraskaAge.Take(7).Select(a => new[] { 1.0, 1.0, a })];
        var plain = new LeastSquares(rows, [.. Iowa.Take(7), .. Nebraska.Take(7)]);
        Assert.Equal(plain.Coefficients[1], 10.0 * fit.Effect("all", 0.9).Log, 1e-9);
        Assert.Equal(plain.StandardError(0.0, 1.0, 0.0), 10.0 * fit.Effect("all", 0.9).StandardError, 1e-9);
    }

    [Theory]
    [InlineData(1, 6.314, 12.706)]
    [InlineData(2, 2.920, 4.303)]
    [InlineData(5, 2.015, 2.571)]
    [InlineData(9, 1.833, 2.262)]
    [InlineData(20, 1.725, 2.086)]
    [InlineData(100, 1.660, 1.984)]
    public void Student_has_the_printed_quantiles(int freedom, double at95, double at975)
    {
        Assert.Equal(at95, LeastSquares.Student(freedom, 0.90), 5e-4);
        Assert.Equal(at975, LeastSquares.Student(freedom, 0.95), 5e-4);
    }

    [Theory]
    [InlineData(20, 0.8689528)]
    [InlineData(4, 0.2224633)]
    public void Power_of_two_samples_is_the_printed_one(int each, double power)
    {
        var freedom = (2 * each) - 2;
        Assert.Equal(power, StudentPower.Above(Math.Sqrt(each / 2.0), freedom, LeastSquares.Student(freedom, 0.95)), 5e-8);
    }

    /// <summary>R prints 80 % at 16.71477 passes in each group: 16 are too few and 17 enough.</summary>
    [Fact]
    public void Seventeen_in_each_group_are_needed_for_four_of_five()
    {
        static double Power(int each) => StudentPower.Above(Math.Sqrt(each / 2.0), (2 * each) - 2, LeastSquares.Student((2 * each) - 2, 0.95));
        Assert.True(Power(16) < 0.8);
        Assert.True(Power(17) >= 0.8);
    }

    private static ComparedPass Pass(string site, double logValue, double logSpeed, bool isAfter, int number) =>
        new() { Site = site, Value = Math.Exp(logValue), Speed = Math.Exp(logSpeed), IsAfter = isAfter, Number = number + 1 };

    private static void Certified(
        IReadOnlyList<double[]> rows, IReadOnlyList<double> y, double[] coefficients, double[] deviations, double residual, double tolerance)
    {
        var fit = new LeastSquares(rows, y);
        for (var k = 0; k < coefficients.Length; k++)
        {
            Assert.Equal(1.0, fit.Coefficients[k] / coefficients[k], tolerance);
            var weights = new double[coefficients.Length];
            weights[k] = 1.0;
            Assert.Equal(1.0, fit.StandardError(weights) / deviations[k], tolerance);
        }

        Assert.Equal(1.0, fit.Deviation / residual, tolerance);
    }
}
