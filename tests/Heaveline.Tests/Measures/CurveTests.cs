using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Tests.Measures;

/// <summary>The curve through samples against closed forms: windows between samples, peaks, crossings, corners.</summary>
public class CurveTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly RideModel Model = RideModel.Of(PlainCar.Saloon);

    private static Pass Given(Func<double, double> pitch, double last = 2.0, double rate = 400.0) =>
        GivenPass.Of(Model, Hump, 10.0, last, rate, (Channel.Pitch, pitch));

    [Theory]
    [InlineData(0.30001, 1.30001)]
    [InlineData(0.0, 0.0004)]
    [InlineData(0.5, 0.75)]
    [InlineData(-0.0999, 1.9999)]
    public void Of_a_straight_line_every_window_is_exact(double from, double to)
    {
        var pass = Given(t => 0.1 - (0.07 * t));
        var curves = new TracedCurves(pass);
        var (a, b) = (0.1 - (0.07 * from), 0.1 - (0.07 * to));
        var square = (to - from) * ((a * a) + (a * b) + (b * b)) / 3.0;
        Assert.Equal(square, curves.SquareIntegral(PassSignal.Pitch, new(from, to)), 1e-15);
        Assert.Equal(Math.Sqrt(square / (to - from)), curves.Rms(PassSignal.Pitch, new(from, to)), 1e-13);
        Assert.Equal(b, curves.Range(PassSignal.Pitch, new(from, to)).Least, 1e-15);
        Assert.Equal(a, curves.Range(PassSignal.Pitch, new(from, to)).Most, 1e-15);
    }

    // A parabola is a cubic: its top between two samples is met exactly, wherever it lies, and not at all when the window ends before it.
    [Theory]
    [InlineData(0.70000)]
    [InlineData(0.70013)]
    [InlineData(0.70125)]
    [InlineData(0.70240)]
    public void The_top_of_a_parabola_is_met_between_samples_and_only_inside_the_window(double top)
    {
        var pass = Given(t => 0.2 - ((t - top) * (t - top) / 8.0));
        var curves = new TracedCurves(pass);
        Assert.Equal(0.2, curves.Peak(PassSignal.Pitch, new(0.1, 1.0)), 1e-15);
        Assert.Equal(0.2 - (1e-4 * 1e-4 / 8.0), curves.Peak(PassSignal.Pitch, new(0.1, top - 1e-4)), 1e-15);
        Assert.Equal(0.2 - (1e-4 * 1e-4 / 8.0), curves.Peak(PassSignal.Pitch, new(top + 1e-4, 1.0)), 1e-15);
        var valley = Given(t => 0.1 + ((t - top) * (t - top) / 8.0));
        Assert.Equal(0.1, new TracedCurves(valley).Range(PassSignal.Pitch, new(0.1, 1.0)).Least, 1e-15);
    }

    // The stated error: (2πf/r)⁴/20 of a swing's size.
    [Theory]
    [InlineData(1.5, 400.0)]
    [InlineData(12.0, 400.0)]
    [InlineData(12.0, 200.0)]
    public void A_swing_is_missed_by_no_more_than_stated(double hertz, double rate)
    {
        var swing = new DampedSwing(0.1, 0.3, 2.0 * Math.PI * hertz);
        var pass = Given(swing.At, rate: rate);
        var curves = new TracedCurves(pass);
        var stated = Math.Pow(2.0 * Math.PI * hertz / rate, 4) / 20.0;
        for (var i = 0; i < 50; i++)
        {
            var window = new Window(0.2 + (0.00031 * i), 1.2 + (0.00043 * i));
            var exact = swing.Root2(window.From, window.To) / Math.Sqrt(window.Length);
            Assert.Equal(exact, curves.Rms(PassSignal.Pitch, window), exact * stated);
        }

        Assert.Equal(swing.Top, curves.Peak(PassSignal.Pitch), 0.1 * stated);
    }

    [Fact]
    public void Past_a_corner_the_curve_does_not_swing()
    {
        for (var i = 0; i < 10; i++)
        {
            // A rise of 1 a second to a corner somewhere between two samples, then level, then a fall of 20 a second.
            var corner = 0.5 + (0.00025 * i);
            var pass = Given(t => Math.Min(0.1 * (1.0 + t - corner), Math.Min(0.1, 0.1 - (2.0 * (t - corner - 0.1)))), last: 0.62);
            var step = 0.1 / 400.0;
            Assert.InRange<double>(new TracedCurves(pass).Range(PassSignal.Pitch, MeasuredCurves.Record).Most, 0.1, 0.1 + (0.02 * step));
        }
    }

    [Fact]
    public void A_level_is_risen_through_once_a_swing_even_between_two_samples()
    {
        var pass = Given(t => 0.1 * Math.Sin(2.0 * Math.PI * 5.0 * (t - 0.00061)));
        var curve = new Curve(pass, pass.Pitch);
        // From −0.1 s to 2 s: ten and a half periods; the tops lie between samples, just under 0.1 at the samples.
        Assert.Equal(10, curve.Rises(0.05));
        Assert.Equal(10, curve.Rises(0.09999));
        Assert.All(pass.Pitch, p => Assert.True(p < 0.09999));
        Assert.Equal(0, curve.Rises(0.1001));
        Assert.Equal(1, curve.Rises(-0.1001));
    }

    [Fact]
    public void Of_nothing_recorded_there_is_nothing()
    {
        var pass = Given(t => 0.1 * t);
        var curves = new TracedCurves(pass);
        Assert.Equal<double>(0.0, curves.Rms(PassSignal.Pitch, new(2.5, 3.0)));
        Assert.Equal<double>(0.0, curves.SquareIntegral(PassSignal.Pitch, new(2.5, 3.0)));
        Assert.Equal<double>(0.0, curves.Peak(PassSignal.Pitch, new(2.5, 3.0)));
        // A window that the record ends in counts as far as it is recorded.
        Assert.Equal(curves.Rms(PassSignal.Pitch, new(1.5, 2.0)), curves.Rms(PassSignal.Pitch, new(1.5, 9.0)), 1e-15);
        var none = new Curve(pass, []);
        Assert.Equal((0.0, 0.0, 0, 0.0), (none.Peak(), none.Squares(0.0, 0.0), none.Rises(0.0), none.LastAbove(0.1)));
        Assert.Equal((0.3, 0.3), new Curve(pass, [0.3]).Range(0.0, 0.0));
        var (least, most) = new Curve(pass, [0.3, -0.1]).Range(0.0, 1.0);
        Assert.Equal(-0.1, least, 1e-15);
        Assert.Equal(0.3, most, 1e-15);
    }
}
