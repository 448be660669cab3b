using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>
/// A spring in the place of the one that stood there on the scales. The reference state stays the one that was weighed; how the car stands on the new
/// springs follows from the lengths.
/// </summary>
public sealed record SpringSwap
{
    /// <summary>The spring that stood there on the scales.</summary>
    public required Spring Before { get; init; }

    /// <summary>
    /// Law by which the new spring finds its force in the reference state. The spring's own law may be tuned away from it: the force there stays.
    /// </summary>
    public required SpringLaw StandsBy { get; init; }

    /// <summary>
    /// Spring travel from the reference state at which a law tuned away from <see cref="StandsBy"/> pushes as that one does, as if packing made the
    /// difference; null: in the reference state, whatever the car's height then is.
    /// </summary>
    internal double? KeptAt { get; init; }

    /// <summary>How far packers or an adjustable seat press it together more than the seats of the spring before, m; lower is negative.</summary>
    public Amount<Length> Seat { get; init => field = Checked.Finite(value, "Packing is above 0, a lowered seat below."); }

    /// <summary>How far it is still pressed together at full droop, m; null when its free length and the seats say it.</summary>
    public Amount<Length>? Preload
    {
        get;
        init => field = value is { } v ? Checked.NotNegative(v, "0 where it just touches both seats with the wheel hanging.") : null;
    }
}
