using Heaveline.Numerics;
using MathNet.Numerics;

namespace Heaveline.Tests.Numerics;

/// <summary>The trigamma function on its closed forms (NIST Digital Library of Mathematical Functions 5.15).</summary>
public class TrigammaTests
{
    [Fact]
    public void It_has_its_closed_forms()
    {
        var square = Math.PI * Math.PI;
        Assert.Equal(square / 6.0, Trigamma.Of(1.0), 1e-14);
        Assert.Equal(square / 2.0, Trigamma.Of(0.5), 1e-14);
        Assert.Equal((square / 2.0) - 4.0, Trigamma.Of(1.5), 1e-14);
        Assert.Equal((square / 6.0) - 1.0, Trigamma.Of(2.0), 1e-14);
    }

    [Theory]
    [InlineData(0.7)]
    [InlineData(6.0)]
    [InlineData(300.0)]
    public void It_is_the_slope_of_the_digamma_function(double x)
    {
        var h = 1e-4 * x;
        Assert.Equal(1.0, (SpecialFunctions.DiGamma(x + h) - SpecialFunctions.DiGamma(x - h)) / (2.0 * h) / Trigamma.Of(x), 1e-7);
    }
}
