using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>The brightness of a headlamp in a film of an oncoming car.</summary>
public sealed record LampTrack
{
    /// <summary>The frames' own presentation times, s, rising.</summary>
    public required ImmutableArray<double> Times { get; init; }

    /// <summary>Brightness of the lamp and its halo in each frame, above the background, any unit; shape (n).</summary>
    public required ImmutableArray<double> Brightness
    {
        get;
        init => field = value.All(b => double.IsFinite(b) && b >= 0.0)
            ? value
            : throw new RefusedValueException("brightness", "a negative or infinite number", "0 or above", "Give the brightness of each frame.");
    }

    /// <summary>Share of the frames in which the lamp saturates the picture: its swing is cut off there.</summary>
    public double Saturated { get; init => field = Checked.Within(value, 0.0, 1.0); }
}
