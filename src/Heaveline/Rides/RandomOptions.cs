using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>How a random response is computed. Immutable: change a copy with <c>with</c>.</summary>
public sealed record RandomOptions
{
    /// <summary>The usual settings.</summary>
    public static RandomOptions Default { get; } = new();

    /// <summary>
    /// Two wheel tracks that both axles run in, so far apart and of such a waviness. Null (default): each wheel in its own track of an isotropic
    /// surface, as far apart as the wheels are.
    /// </summary>
    public TrackCoherence? Tracks { get; init; }

    /// <summary>
    /// Whether elements that bend are made straight at the response's own level and mean (default); otherwise at trim, for small motions.
    /// </summary>
    public bool AtOwnLevel { get; init; } = true;

    /// <summary>Relative error of the root mean squares that the sum over frequencies may leave (–). 1e-12 to 0.01. Default 1e-6.</summary>
    public double Tolerance { get; init => field = Checked.Within(value, 1e-12, 1e-2); } = 1e-6;
}
