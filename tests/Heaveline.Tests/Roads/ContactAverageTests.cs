using CsCheck;
using Heaveline.Quantities;
using Heaveline.Roads;
using MathNet.Numerics.Integration;

namespace Heaveline.Tests.Roads;

public class ContactAverageTests
{
    private static readonly Gen<Amount<Length>> Contacts = Gen.Double[0.001, 0.5].Select(RandomRoads.Metres);

    [Fact]
    public void Without_contact_length_the_road_is_itself()
    {
        var profile = new Ramp { Height = RandomRoads.Metres(0.1), Length = RandomRoads.Metres(2.0) }.Draw();
        Assert.Same(profile, profile.AveragedOver(default));
    }

    [Fact]
    public void A_long_ramp_is_unchanged_but_at_its_corners()
    {
        var ramp = new Ramp { Height = RandomRoads.Metres(0.5), Length = RandomRoads.Metres(5.0) }.Draw();
        var averaged = ramp.AveragedOver(RandomRoads.Metres(0.2));
        for (var x = 0.1; x <= 4.9; x += 0.1)
        {
            Assert.Equal(0.1 * x, averaged.Height(x), 1e-12);
            Assert.Equal(0.1, averaged.Slope(x + 1e-9), 1e-9);
        }

        // At the foot the patch lies half on the slope: (1/c) times the triangle s c²/8.
        Assert.Equal(0.1 * 0.2 / 8.0, averaged.Height(0.0), 1e-12);
    }

    // The Fourier transform of the averaging window: sin(πc/λ)/(πc/λ), textbook.
    [Theory]
    [InlineData(0.12, 1.0)]
    [InlineData(0.20, 0.5)]
    [InlineData(0.50, 0.5)]
    public void A_sine_loses_amplitude_as_sinc_of_contact_over_wavelength(double contact, double wavelength)
    {
        var sine = new SineRoad { Amplitude = RandomRoads.Metres(0.02), Wavelength = RandomRoads.Metres(wavelength), Waves = 8 };
        var profile = sine.DrawLeft();
        var averaged = profile.AveragedOver(RandomRoads.Metres(contact));
        var argument = Math.PI * contact / wavelength;
        for (var x = 3.0 * wavelength; x < 6.0 * wavelength; x += 0.0137)
        {
            Assert.Equal(Math.Sin(argument) / argument * 0.02 * Math.Sin(2.0 * Math.PI * x / wavelength), averaged.Height(x), 1.1e-7);
        }
    }

    [Fact]
    public void A_sharp_step_becomes_a_ramp_as_long_as_the_contact()
    {
        var averaged = new Step { Height = RandomRoads.Metres(0.05) }.Draw().AveragedOver(RandomRoads.Metres(0.1));
        Assert.False(averaged.HasJump);
        Assert.Equal(0.0, averaged.Height(-0.05), 1e-15);
        Assert.Equal(0.0125, averaged.Height(-0.025), 1e-15);
        Assert.Equal(0.05, averaged.Height(0.05), 1e-15);
        Assert.Equal(0.5, averaged.Slope(0.0), 1e-12);
    }

    [Fact]
    public void The_average_is_within_a_tenth_of_a_micrometre_of_the_integral() =>
        Gen.Select(RandomRoads.WithJumps, Contacts, Gen.Double[-0.1, 1.1]).Sample(
            (profile, contact, share) =>
            {
                var x = profile.Start + (share * (profile.End - profile.Start));
                Assert.Equal(
                    Integral(profile, x - (contact.Si / 2.0), x + (contact.Si / 2.0)) / contact.Si, profile.AveragedOver(contact).Height(x), 1.01e-7);
            },
            iter: 300);

    // Rough samples make long, strongly bent pieces, and the error of a Hermite piece is greatest at its middle.
    [Fact]
    public void The_average_of_rough_samples_is_within_a_tenth_of_a_micrometre_between_its_knots() =>
        Gen.Select(Gen.Double[-0.05, 0.05].Array[4, 12], Gen.Double[0.02, 0.2], Contacts).Sample(
            (heights, spacing, contact) =>
            {
                var distances = Enumerable.Range(0, heights.Length).Select(i => i * spacing).ToArray();
                var profile = Road.FromMeasured("rough", distances, heights, null).Left;
                var averaged = profile.AveragedOver(contact);
                for (var i = 1; i < averaged.Knots.Length; i++)
                {
                    var x = 0.5 * (averaged.Knots[i - 1] + averaged.Knots[i]);
                    Assert.Equal(Integral(profile, x - (contact.Si / 2.0), x + (contact.Si / 2.0)) / contact.Si, averaged.Height(x), 1.01e-7);
                }
            },
            iter: 300);

    [Fact]
    public void The_average_never_breaks_and_keeps_both_ends() => Gen.Select(RandomRoads.WithJumps, Contacts).Sample((profile, contact) =>
    {
        var averaged = profile.AveragedOver(contact);
        Assert.False(averaged.HasJump);
        Assert.Equal(profile.Start - (contact.Si / 2.0), averaged.Start);
        Assert.Equal(profile.End + (contact.Si / 2.0), averaged.End);
        Assert.Equal(profile.StartHeight, averaged.StartHeight, 1e-12);
        Assert.Equal(profile.EndHeight, averaged.EndHeight);
        Assert.True(Profile.FromCubics(averaged.Knots, averaged.Coefficients).Knots.Length > 1);
    });

    // Averaging only spreads each height over c, symmetrically, and the road is level at both ends: the area under it stays.
    [Fact]
    public void The_average_keeps_the_area_under_the_road() => Gen.Select(RandomRoads.WithJumps, Contacts).Sample(
        (profile, contact) =>
        {
            var averaged = profile.AveragedOver(contact);
            var length = profile.End - profile.Start + contact.Si;
            Assert.Equal(Integral(profile, averaged.Start, averaged.End), Integral(averaged, averaged.Start, averaged.End), 1.01e-7 * length);
        },
        iter: 300);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1e-4)]
    [InlineData(1.5)]
    [InlineData(double.NaN)]
    public void A_contact_length_that_no_tyre_has_is_refused(double contact) =>
        Assert.Throws<RefusedValueException>(() => Profile.Flat.AveragedOver(RandomRoads.Metres(contact)));

    // Gauss-Legendre from knot to knot is exact for cubics and knows nothing of the antiderivative used inside.
    private static double Integral(Profile profile, double from, double to)
    {
        var edges = profile.Knots.ToArray().Where(k => k > from && k < to).Prepend(from).Append(to).ToArray();
        var sum = 0.0;
        for (var i = 1; i < edges.Length; i++)
        {
            sum += edges[i] > edges[i - 1] ? GaussLegendreRule.Integrate(profile.Height, edges[i - 1], edges[i], 4) : 0.0;
        }

        return sum;
    }
}
