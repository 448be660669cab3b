using System.Globalization;

namespace Heaveline.Camera.Drawn;

/// <summary>When the frames of a drawn film are taken.</summary>
internal sealed record DrawnClock
{
    // Turn from frame to frame of the wave that makes the times uneven: no simple share of a circle.
    private const double Turn = 0.7;

    /// <summary>Frames a second.</summary>
    public double Rate { get; init; } = 60.0;

    /// <summary>Greatest distance of a frame from its even time, s.</summary>
    public double Uneven { get; init; }

    /// <summary>From this frame on every second one is left out, as a phone does where it gets dark; null: none.</summary>
    public int? HalvedFrom { get; init; }

    /// <summary>Time of a frame after the first, s.</summary>
    public double Of(int frame) =>
        ((HalvedFrom is { } from && frame > from ? from + (2.0 * (frame - from)) : frame) / Rate) + (Uneven * Math.Sin(Turn * frame));

    /// <summary>How many frames a duration holds.</summary>
    public int Count(double duration)
    {
        var count = 0;
        while (Of(count) <= duration)
        {
            count++;
        }

        return count;
    }

    /// <summary>The same for FFmpeg, which stamps the frames.</summary>
    public string Stamps => string.Create(
        CultureInfo.InvariantCulture,
        $"settb=1/90000,setpts=(if(gt(N\\,{HalvedFrom ?? int.MaxValue})\\,{HalvedFrom ?? 0}+2*(N-{HalvedFrom ?? 0})\\,N)/{Rate}")
        + string.Create(CultureInfo.InvariantCulture, $"+{Uneven}*sin({Turn}*N))/TB");
}
