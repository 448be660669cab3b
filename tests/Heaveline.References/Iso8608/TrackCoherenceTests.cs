using Heaveline.Roads;
using MathNet.Numerics;

namespace Heaveline.References.Iso8608;

/// <summary>Likeness of two tracks of an isotropic surface, and the Bessel function it rests on; sources in source.md.</summary>
public class TrackCoherenceTests
{
    /// <summary>γ to four digits, worked out with SciPy.</summary>
    [Theory]
    [InlineData(1.5, 2.0, 0.01, 0.9868)]
    [InlineData(1.5, 2.0, 0.02, 0.9592)]
    [InlineData(1.5, 2.0, 0.05, 0.8415)]
    [InlineData(1.5, 2.0, 0.1, 0.6264)]
    [InlineData(1.5, 2.0, 0.2, 0.3071)]
    [InlineData(1.5, 2.0, 0.5, 0.0263)]
    [InlineData(1.5, 2.0, 1.0, 0.0003)]
    [InlineData(1.6, 2.0, 0.01, 0.9853)]
    [InlineData(1.6, 2.0, 0.02, 0.9548)]
    [InlineData(1.6, 2.0, 0.05, 0.8270)]
    [InlineData(1.6, 2.0, 0.1, 0.5997)]
    [InlineData(1.6, 2.0, 0.2, 0.2773)]
    [InlineData(1.6, 2.0, 0.5, 0.0197)]
    [InlineData(1.6, 2.0, 1.0, 0.0002)]
    [InlineData(1.5, 2.5, 0.01, 0.9932)]
    [InlineData(1.5, 2.5, 0.05, 0.8891)]
    [InlineData(1.5, 2.5, 0.1, 0.7014)]
    [InlineData(1.5, 2.5, 0.2, 0.3762)]
    [InlineData(1.5, 2.5, 0.5, 0.0379)]
    public void Gamma_is_that_of_an_isotropic_surface(double track, double waviness, double n, double gamma)
    {
        var coherence = new TrackCoherence { Track = new(track), Waviness = waviness };
        Assert.Equal(gamma, coherence.At(n), 5e-5);
        Assert.Equal(gamma * gamma, coherence.SquaredAt(n), 1e-4);
    }

    /// <summary>
    /// Isotropy itself, without a Bessel function: an isotropic surface has a density over (n, m) that depends on n² + m² only, for G ∝ n^−w as
    /// (n² + m²)^−(w+1)/2; the tracks' cross density is its cosine transform over m. Integrated by the trapezoidal rule with m = n sinh u.
    /// </summary>
    [Theory]
    [InlineData(1.5, 2.0, 0.1)]
    [InlineData(1.5, 2.5, 0.1)]
    [InlineData(1.4, 3.4, 0.05)]
    [InlineData(1.6, 1.6, 0.2)]
    public void Gamma_is_the_cosine_transform_across_an_isotropic_surface(double track, double waviness, double n)
    {
        var (cross, auto) = (0.0, 0.0);
        const double Width = 1e-5;
        for (var u = -16.0; u <= 16.0; u += Width)
        {
            // cosh^−w u left after dm = n cosh u du.
            var density = Math.Pow(Math.Cosh(u), -waviness);
            auto += density;
            cross += density * Math.Cos(2.0 * Math.PI * track * n * Math.Sinh(u));
        }

        Assert.Equal(cross / auto, new TrackCoherence { Track = new(track), Waviness = waviness }.At(n), 1e-6);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.3)]
    [InlineData(2.0)]
    [InlineData(20.0)]
    public void The_Bessel_function_of_half_integer_order_is_elementary(double x)
    {
        var half = Math.Sqrt(Math.PI / (2.0 * x)) * Math.Exp(-x);
        Assert.Equal(1.0, SpecialFunctions.BesselK(0.5, x) / half, 1e-13);
        Assert.Equal(1.0, SpecialFunctions.BesselK(1.5, x) / (half * (1.0 + (1.0 / x))), 1e-13);

        // γ for w = 1 and 3: e^−a and (1 + a)e^−a.
        var n = x / (2.0 * Math.PI * 1.5);
        Assert.Equal(Math.Exp(-x), new TrackCoherence { Track = new(1.5), Waviness = 1.0 }.At(n), 1e-13);
        Assert.Equal((1.0 + x) * Math.Exp(-x), new TrackCoherence { Track = new(1.5), Waviness = 3.0 }.At(n), 1e-13);
    }

    [Fact]
    public void The_Bessel_function_has_its_tabulated_values()
    {
        Assert.Equal(0.13986588, SpecialFunctions.BesselK(1.0, 2.0), 5e-9);
        Assert.Equal(0.4211, SpecialFunctions.BesselK(0.0, 1.0), 1e-4);
    }
}
