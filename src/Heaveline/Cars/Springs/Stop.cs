using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>A bump or rebound stop: nothing within its clearance, then a force that grows with the travel beyond it.</summary>
public sealed record Stop
{
    /// <summary>
    /// Wheel travel from the reference state until it touches, m. Zero or above; towards bump for a bump stop, towards rebound for a rebound stop.
    /// </summary>
    public required Amount<Length> Clearance
    {
        get;
        init => field = Checked.NotNegative(value, "Measure the gap in the reference state, at the wheel; 0 when it touches already.");
    }

    /// <summary>C of F = C·pᵉ, p the wheel travel past the clearance in m; N/m when the exponent is 1. Null when a table is given.</summary>
    public Amount<Stiffness>? Rate { get; init => field = value is { } v ? Checked.Positive(v, "Press the stop on a scale.") : null; }

    /// <summary>
    /// Exponent e of F = C·pᵉ (–), with C scaled so that the force at 10 mm past the clearance equals <see cref="Rate"/>·10 mm. 1 to 5.
    /// </summary>
    public Amount<Plain> Exponent
    {
        get;
        init => field = Checked.Within(value, 1.0, 5.0, "1 is a linear stop; rubber lies near 1.5 to 3.");
    } = new(1.0);

    /// <summary>Force against travel past the clearance, from (0, 0) rising, N against m at the wheel; null when a rate is given.</summary>
    public ForceTable? Table { get; init; }

    /// <summary>Length of the stop itself without load, m, by which another one finds its clearance; null when nobody measured it.</summary>
    public Amount<Length>? Length { get; init => field = value is { } v ? Checked.Positive(v, "Measure it along its rod, without load.") : null; }

    /// <summary>Travel past the clearance at which the model ends (metal to metal), m; null: no end.</summary>
    public Amount<Length>? SolidAfter
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Leave it out when the stop has no hard end.") : null;
    }
}
