using Heaveline.Quantities;

namespace Heaveline.Responses;

/// <summary>How a pass over a random road is run. Immutable: change a copy with <c>with</c>.</summary>
public sealed record RandomPassOptions
{
    /// <summary>The usual settings.</summary>
    public static RandomPassOptions Default { get; } = new();

    /// <summary>Evaluated time, s. 10 to 3600. Default 120 s.</summary>
    public double Duration { get; init => field = Checked.Within(value, 10.0, 3600.0); } = 120.0;

    /// <summary>Time before it in which the road grows to its full size and the car's start dies away, s. 2 to 60. Default 8 s, the first half of it for the road.</summary>
    public double LeadTime { get; init => field = Checked.Within(value, 2.0, 60.0); } = 8.0;

    /// <summary>Number of equal parts of the record that the interval is read from (–), 6 to 200. Default 20.</summary>
    public int Batches { get; init => field = (int)Checked.Within(value, 6.0, 200.0); } = 20;

    /// <summary>Which road of this spectrum: any number.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Recorded samples a second, 50 to 4000. Default 400.</summary>
    public double SamplesPerSecond { get; init => field = Checked.Within(value, 50.0, 4000.0); } = 400.0;
}
