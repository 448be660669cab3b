using Heaveline.Quantities;

namespace Heaveline.Rides;

/// <summary>How passes over random roads are run. Immutable: change a copy with <c>with</c>.</summary>
public sealed record RandomPassOptions
{
    /// <summary>The usual settings.</summary>
    public static RandomPassOptions Default { get; } = new();

    /// <summary>Number of independent roads (–), 6 to 400. Default 16.</summary>
    public int Roads { get; init => field = (int)Checked.Within(value, 6.0, 400.0); } = 16;

    /// <summary>Evaluated time on each, s. 2 to 600. Default 12 s.</summary>
    public double Duration { get; init => field = Checked.Within(value, 2.0, 600.0); } = 12.0;

    /// <summary>
    /// Time before it in which the road grows to its full size and the car's start dies away, s. 2 to 60.
    /// Default 8 s, the first half of it for the road.
    /// </summary>
    public double LeadTime { get; init => field = Checked.Within(value, 2.0, 60.0); } = 8.0;

    /// <summary>Which roads of this spectrum: any number.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Recorded samples a second, 50 to 4000. Default 400.</summary>
    public double SamplesPerSecond { get; init => field = Checked.Within(value, 50.0, 4000.0); } = 400.0;
}
