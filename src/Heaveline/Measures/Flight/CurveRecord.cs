using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>The record of one of several passes side by side.</summary>
/// <param name="Request">Car, road and speed.</param>
/// <param name="Clock">Its clock.</param>
/// <param name="First">Number of its first sample, counted from the first of all.</param>
internal sealed record CurveRecord(PassRequest Request, PassTiming Clock, int First)
{
    private const int Wheels = 4;

    /// <summary>Number of its samples.</summary>
    public int Count => Clock.Samples;

    /// <summary>Time of a sample, s.</summary>
    /// <param name="place">In samples from its first.</param>
    public double Time(double place) => Clock.Start + (place * Clock.SampleStep);

    /// <summary>A height of the body at a sample less the mean height of the road under the four wheels, m.</summary>
    public double AboveRoad(double height, int sample)
    {
        var (model, road, speed) = Request;
        var side = model.Rolls ? null : road.Side;
        for (var corner = 0; corner < Wheels; corner++)
        {
            var profile = side is { } one ? (one == Tracks.Left ? road.Left : road.Right) : corner % 2 == 0 ? road.Left : road.Right;
            var back = corner < 2 ? 0.0 : model.Car.Wheelbase.Si;
            height -= (profile.Height((speed * Time(sample)) - back) - profile.StartHeight) / Wheels;
        }

        return height;
    }
}
