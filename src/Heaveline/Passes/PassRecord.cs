using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>What is recorded of a pass: how densely, from when, until when. Immutable: change a copy with <c>with</c>.</summary>
public sealed record PassRecord
{
    /// <summary>The usual record.</summary>
    public static PassRecord Default { get; } = new();

    /// <summary>Recorded samples a second, 50 to 4000. Default 400.</summary>
    public double SamplesPerSecond { get; init => field = Checked.Within(value, 50.0, 4000.0); } = 400.0;

    /// <summary>Time recorded before the front wheels reach the road's beginning, s. 0 to 10. Default 0.1 s.</summary>
    public double LeadTime { get; init => field = Checked.Within(value, 0.0, 10.0); } = 0.1;

    /// <summary>Time recorded after the rear wheels have left the obstacle, s. 0.5 to 60. Default 3 s.</summary>
    public double SettlingTime { get; init => field = Checked.Within(value, 0.5, 60.0); } = 3.0;

    /// <summary>
    /// Whole recorded time from x = 0 on, s. 0.1 to 36 000; null: until the rear wheels have left the road's end and <see cref="SettlingTime"/> is
    /// over.
    /// </summary>
    public double? Duration { get; init => field = value is { } v ? Checked.Within(v, 0.1, 36000.0) : null; }

    /// <summary>Time from one sample to the next, s.</summary>
    public double SampleStep => 1.0 / SamplesPerSecond;
}
