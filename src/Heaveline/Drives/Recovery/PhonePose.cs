using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>How a phone lies in a car, known to whoever plants its log.</summary>
public sealed record PhonePose
{
    /// <summary>Behind the front axle, m. −3 to 12.</summary>
    public double BehindFrontAxle { get; init => field = Checked.Within(value, -3.0, 12.0); } = 1.3;

    /// <summary>Left of the middle, m. −2 to 2.</summary>
    public double Left { get; init => field = Checked.Within(value, -2.0, 2.0); }

    /// <summary>Above the axes about which the body pitches and rolls, m. −1 to 2.</summary>
    public double Up { get; init => field = Checked.Within(value, -1.0, 2.0); }

    /// <summary>By what its first axis is turned to the left of the car's forward, rad.</summary>
    public double Turned { get; init => field = Checked.Within(value, -10.0, 10.0); }

    /// <summary>By what it is tipped about its own first axis, its second axis up, rad.</summary>
    public double Tipped { get; init => field = Checked.Within(value, -10.0, 10.0); }
}
