using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Tests.Doubts;

namespace Heaveline.Tests.Rules;

/// <summary>
/// Damping ratios at which pitch, heave and tyre load are least on a class C road at 22 m/s, ratio 1.1: near 0.10, 0.20 to 0.25 and 0.40 to 0.50 by
/// an independent linear half car with its frequency response; no published source. One drawn minute of road scatters about them.
/// </summary>
public class DampingOptimaTests
{
    private static readonly Road ClassC = Road.From(
        new RandomRoad { Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(0.0), Length = new(22.0 * 40.0), Seed = 7 });

    private static readonly PassOptions Options = new()
    {
        Method = FixedStep.Once with { LargestStep = 1.25e-3 },
        Record = new() { SamplesPerSecond = 200.0 },
    };

    // RMS pitch acceleration in rad/s² of the same half car, printed for wheelbases of 2.3, 2.6, 2.9 and 3.2 m; 40
    // s of one drawn road scatter by some 5 %.
    [Theory]
    [InlineData(true, 0.840, 0.811, 0.747, 0.668)]
    [InlineData(false, 0.652, 0.811, 0.934, 1.018)]
    public void A_longer_wheelbase_pitches_less_only_if_the_inertia_grows_with_it(bool grows, double a, double b, double c, double d)
    {
        double[] expected = [a, b, c, d];
        var map = RuleMap.Of(
            (MeasuredCar.Saloon with { Ratio = 1.1 }).Model(),
            ClassC,
            RuleAxis.Wheelbase([2.3, 2.6, 2.9, 3.2], grows),
            [22.0],
            [WholePassCatalogue.RmsPitchAcceleration],
            Options,
            degree: 2)[0];
        Assert.All(expected.Zip(map.Measured[0]), p => Assert.Equal(p.First, p.Second, 0.07 * p.First));
        Assert.Equal(grows ? RuleVerdict.Holds : RuleVerdict.Fails, map.Verdict(0, 3));
    }

    [Fact]
    public void Pitch_wants_little_damping_heave_more_and_the_tyres_most()
    {
        var optima = DampingOptima.Of(
            (MeasuredCar.Saloon with { Ratio = 1.1 }).Model(), ClassC, 22.0, [0.05, 0.10, 0.15, 0.20, 0.25, 0.30, 0.40, 0.50, 0.60, 0.70],
            Options, degree: 2);
        Assert.InRange(optima.Pitch!.Value, 0.06, 0.16);
        Assert.InRange(optima.Heave!.Value, 0.17, 0.28);
        Assert.InRange(optima.FrontTyre!.Value, 0.35, 0.55);
        Assert.Equal(0.30, optima.Own, 1e-6);
    }
}
