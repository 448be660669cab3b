using Heaveline.Insight;
using Heaveline.Responses;
using Heaveline.Roads;

namespace Heaveline.Tests.Insight;

/// <summary>
/// Damping ratios at which pitch, heave and tyre load are least on a class C road at 22 m/s, ratio 1.1: near 0.10, 0.20 to 0.25 and 0.40 to 0.50 by an
/// independent linear half car with its frequency response; no published source. One drawn minute of road scatters about them.
/// </summary>
public class DampingOptimaTests
{
    [Fact]
    public void Pitch_wants_little_damping_heave_more_and_the_tyres_most()
    {
        var road = Road.From(new RandomRoad { Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(0.0), Length = new(22.0 * 40.0), Seed = 7 });
        var optima = DampingOptima.Of(
            (MeasuredCar.Saloon with { Ratio = 1.1 }).Model(), road, 22.0, [0.05, 0.10, 0.15, 0.20, 0.25, 0.30, 0.40, 0.50, 0.60, 0.70],
            PassOptions.Default with { StatesError = false, SamplesPerSecond = 200.0, LargestStep = 1.25e-3 }, degree: 2);
        Assert.InRange(optima.Pitch!.Value, 0.06, 0.16);
        Assert.InRange(optima.Heave!.Value, 0.17, 0.28);
        Assert.InRange(optima.FrontTyre!.Value, 0.35, 0.55);
        Assert.Equal(0.30, optima.Own, 1e-6);
    }
}
