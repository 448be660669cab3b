using Heaveline.Films;

namespace Heaveline.Studies;

/// <summary>What is asked of a headlamp's brightness.</summary>
public sealed record FlashAsked
{
    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>The brightness.</summary>
    public required LampTrack Lamp { get; init; }

    /// <summary>When the rear wheels have left the bump, s of the film; null: after the lamp's quickest change.</summary>
    public double? From { get; init; }
}
