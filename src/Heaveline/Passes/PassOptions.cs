using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>How a pass is run. Immutable: change a copy with <c>with</c>.</summary>
public sealed record PassOptions
{
    /// <summary>The usual settings.</summary>
    public static PassOptions Default { get; } = new();

    /// <summary>Largest step, s. 1e-6 to 0.002. Default 0.625 ms; the run takes a smaller one where the car's fastest motion asks for it.</summary>
    public double LargestStep { get; init => field = Checked.Within(value, 1e-6, 2e-3); } = 0.625e-3;

    /// <summary>Recorded samples a second, 50 to 4000. Default 400.</summary>
    public double SamplesPerSecond { get; init => field = Checked.Within(value, 50.0, 4000.0); } = 400.0;

    /// <summary>Time recorded after the rear wheels have left the obstacle, s. 0.5 to 60. Default 3 s.</summary>
    public double SettlingTime { get; init => field = Checked.Within(value, 0.5, 60.0); } = 3.0;

    /// <summary>Time recorded before the front wheels reach the road's beginning, s. 0 to 10. Default 0.1 s.</summary>
    public double LeadTime { get; init => field = Checked.Within(value, 0.0, 10.0); } = 0.1;

    /// <summary>
    /// Whole recorded time from x = 0 on, s; null: until the rear wheels have left the road's end and <see cref="SettlingTime"/> is over.
    /// </summary>
    public double? Duration { get; init => field = value is { } v ? Checked.Within(v, 0.1, 36000.0) : null; }

    /// <summary>Whether the run is repeated with twice the step to state its own error. Default true.</summary>
    public bool StatesError { get; init; } = true;

    /// <summary>Whether the exact event-driven solver runs instead: for cars whose laws are straight between their kinks.</summary>
    public bool Certified { get; init; }
}
