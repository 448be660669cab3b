using Heaveline.Roads;

namespace Heaveline.References.RoughnessIndex;

/// <summary>The index of profiles whose index is known otherwise; sources in source.md.</summary>
public class IriTests
{
    /// <summary>Sine of slope amplitude 1 m/km: index by (2/π)·gain·sinc, and by the algorithm at 50 mm, four digits each.</summary>
    [Theory]
    [InlineData(1.0, 0.1565, 0.1561)]
    [InlineData(2.0, 0.9514, 0.9505)]
    [InlineData(5.0, 0.7416, 0.7415)]
    [InlineData(10.0, 0.8011, 0.8011)]
    [InlineData(20.0, 0.7854, 0.7855)]
    [InlineData(30.0, 0.2895, 0.2895)]
    public void A_sine_has_the_index_of_its_gain(double wavelength, double closedForm, double stepped)
    {
        var k = 2.0 * Math.PI / wavelength;
        var heights = Heights(6000.0, 0.05, x => 1e-3 / k * Math.Sin(k * x));
        // The first part keeps what is left of the start, the last is no whole number of waves.
        var parts = Iri.Of(heights, new(0.05), new(300.0)).Segments;
        var index = parts.Skip(1).SkipLast(1).Average(part => part.MetresPerKilometre);

        // One unit of the last printed digit for the algorithm's column (its length is not known); for the closed
        // form 0.3 %, what a held slope costs at 1 m.
        Assert.Equal(stepped, index, 1.5e-4);
        Assert.Equal(1.0, index / closedForm, 3e-3);
    }

    /// <summary>Step of 10 mm at 25 m on 100 m.</summary>
    [Theory]
    [InlineData(0.25, 0.345641, 5e-7)]
    [InlineData(0.05, 0.344338, 5e-7)]
    public void A_step_has_its_index(double spacing, double index, double digit) =>
        Assert.Equal(index, Iri.Of(Heights(100.0, spacing, x => x >= 25.0 - 1e-9 ? 0.010 : 0.0), new(spacing)).MetresPerKilometre, digit);

    /// <summary>Triangle 20 mm high on a base of 2 m, its middle at 25 m, on 100 m.</summary>
    [Theory]
    [InlineData(0.25, 0.710487, 5e-7)]
    [InlineData(0.05, 0.697712, 5e-7)]
    public void A_triangle_has_its_index(double spacing, double index, double digit) =>
        Assert.Equal(
            index, Iri.Of(Heights(100.0, spacing, x => 0.020 * Math.Max(0.0, 1.0 - Math.Abs(x - 25.0))), new(spacing)).MetresPerKilometre, digit);

    /// <summary>Ramp of 10 mm from 25 to 26 m, on 100 m.</summary>
    [Fact]
    public void A_ramp_has_its_index() =>
        Assert.Equal(0.315829, Iri.Of(Heights(100.0, 0.25, x => 0.010 * Math.Clamp(x - 25.0, 0.0, 1.0)), new(0.25)).MetresPerKilometre, 5e-7);

    /// <summary>
    /// A grade that ends at 10.5 m, within the 11 m that the car starts on [Sayers, TRR 1501 (1995)]: it starts on 10.5/11 of the grade, and moves at
    /// once. The index of the first 10 m and of the rest against the quarter car's equations, stepped here by Runge and Kutta's fourth order.
    /// </summary>
    [Fact]
    public void The_car_starts_on_the_mean_slope_of_eleven_metres()
    {
        const double grade = 0.01;
        var parts = Iri.Of(Heights(40.0, 0.25, x => grade * Math.Min(x, 10.5)), new(0.25), new(10.0)).Segments;
        double[] state = [grade * 10.5 / 11.0, 0.0, grade * 10.5 / 11.0, 0.0];
        var motion = new List<double>();
        for (var i = 0; i < 160; i++)
        {
            // The slope from here to 0.25 m on, held for a spacing.
            state = Rolled(state, i < 42 ? grade : 0.0, 0.25 / (80.0 / 3.6));
            motion.Add(Math.Abs(state[2] - state[0]));
        }

        Assert.Equal(motion.Take(40).Average(), parts[0].Slope, 1e-8 * grade);
        Assert.Equal(motion.Skip(40).Take(40).Average(), parts[1].Slope, 1e-8 * grade);
        Assert.Equal(motion.Skip(80).Take(40).Average(), parts[2].Slope, 1e-8 * grade);
        Assert.True(parts[0].Slope > 1e-4 * grade);
    }

    [Fact]
    public void A_constant_grade_has_none() =>
        Assert.Equal(0.0, Iri.Of(Heights(100.0, 0.25, x => 0.02 * x), new(0.25)).MetresPerKilometre, 1e-9);

    /// <summary>White slopes (w = 2, all wavelengths): 2.173 m/km for the mean of class A, and twice as much for each class more.</summary>
    [Theory]
    [InlineData('A', 1.0)]
    [InlineData('B', 2.0)]
    [InlineData('E', 16.0)]
    public void The_mean_of_a_class_has_the_index_of_white_slopes(char letter, double times)
    {
        var roadClass = Assert.Single(RoadClass.All, c => c.Letter == letter);
        var wide = RoadSpectrum.Of(roadClass) with { Band = new(1e-3, 100.0) };
        Assert.Equal(2.173 * times, 1000.0 * Iri.Expected(wide), 6e-4 * times);
    }

    /// <summary>
    /// White slopes through the gain alone: a white road velocity of one-sided density S feeds the tyre k₁S/4 of power per kilogram, the damper
    /// takes c·E[ṙ²], and so ∫ gain² dn = k₁/(4cV). For the mean of class A that is 2.219 m/km.
    /// </summary>
    [Fact]
    public void White_slopes_without_the_moving_average_have_the_index_of_the_closed_form()
    {
        var sum = 0.0;
        const double Width = 1e-3;
        for (var u = Math.Log(1e-5); u < Math.Log(1e4); u += Width)
        {
            var n = Math.Exp(u);
            sum += GoldenCar.Gain(n) * GoldenCar.Gain(n) * n * Width;
        }

        var closedForm = GoldenCar.Tyre / (4.0 * GoldenCar.Damping * GoldenCar.Speed);
        Assert.Equal(closedForm, sum, 1e-6 * closedForm);
        var slopes = RoadSpectrum.Of(RoadClass.A).SlopesAt(0.1);
        Assert.Equal(2.219, 1000.0 * Math.Sqrt(2.0 / Math.PI * slopes * sum), 5e-4);
    }

    // z̈ = 63.3·(u − z) + 6·(u̇ − ż), 0.15·ü = 653·(slope − u) − the same; z and u slopes of body and wheel.
    private static double[] Rolled(double[] state, double slope, double time)
    {
        const int steps = 40;
        var h = time / steps;
        for (var i = 0; i < steps; i++)
        {
            var k1 = Rates(state);
            var k2 = Rates(Plus(state, k1, 0.5 * h));
            var k3 = Rates(Plus(state, k2, 0.5 * h));
            var k4 = Rates(Plus(state, k3, h));
            state = [.. state.Select((x, j) => x + (h / 6.0 * (k1[j] + (2.0 * k2[j]) + (2.0 * k3[j]) + k4[j])))];
        }

        return state;

        double[] Rates(double[] x)
        {
            var between = (63.3 * (x[2] - x[0])) + (6.0 * (x[3] - x[1]));
            return [x[1], between, x[3], ((653.0 * (slope - x[2])) - between) / 0.15];
        }

        double[] Plus(double[] x, double[] rate, double step) => [.. x.Zip(rate, (a, b) => a + (step * b))];
    }

    private static double[] Heights(double length, double spacing, Func<double, double> at) =>
        [.. Enumerable.Range(0, (int)Math.Round(length / spacing) + 1).Select(i => at(i * spacing))];
}
