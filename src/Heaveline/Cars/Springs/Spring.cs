using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>One spring, described at itself, and how far it moves with its wheel.</summary>
public sealed record Spring
{
    /// <summary>Force against its own travel.</summary>
    public required SpringLaw Law { get; init; }

    /// <summary>Spring travel per wheel travel. One when the rate is given at the wheel.</summary>
    public MotionRatio MotionRatio { get; init; } = MotionRatio.One;

    /// <summary>Length of a coil spring without any load, m; null when nobody measured it.</summary>
    public Amount<Length>? FreeLength
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Measure it out of the car, from end to end without load.") : null;
    }

    /// <summary>
    /// Length of a coil spring between its seats in the reference state, mean of the axle's two, m; null when nobody measured it. Of a spring
    /// that was bought, null: its seats stand where those of <see cref="SpringSwap.Before"/> do.
    /// </summary>
    public Amount<Length>? InstalledLength
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Measure between the seats, the car standing as it was weighed.") : null;
    }

    /// <summary>Length at which all coils touch, m; null when nobody measured it.</summary>
    public Amount<Length>? BlockLength
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Count the coils from end to end and multiply by the wire, or press it solid.") : null;
    }

    /// <summary>Inside diameter of a coil spring at its ends, as its seats take it, m; null when nobody measured it.</summary>
    public Amount<Length>? SeatDiameter
    {
        get;
        init => field = value is { } v ? Checked.Positive(v, "Measure inside the last coil, where the seat's spigot stands.") : null;
    }

    /// <summary>How it came to stand where another was weighed; null: it stood there on the scales.</summary>
    public SpringSwap? Swap { get; init; }

    /// <summary>Whether anything is said of its lengths, so that it is known for a coil that pushes and never pulls.</summary>
    public bool HasLengths => FreeLength is not null || InstalledLength is not null || BlockLength is not null || Swap is not null;

    /// <summary>The same spring, its seats and lengths kept, with another law; a bought one finds its height anew.</summary>
    /// <param name="law">The law.</param>
    public Spring WithLaw(SpringLaw law) => this with { Law = law, Swap = Swap is null ? null : Swap with { StandsBy = law, KeptAt = null } };

    /// <summary>The same spring with another law, packed so that it pushes as before at a travel: there the height stays.</summary>
    /// <param name="law">The law.</param>
    /// <param name="at">Spring travel from the reference state, m; a spring that is kept at one already stays there.</param>
    internal Spring Packed(SpringLaw law, double at) =>
        this with { Law = law, Swap = Swap is null ? null : Swap with { KeptAt = Swap.KeptAt ?? at } };

    /// <summary>The law by which its force says how long it is: that of a bought spring's lengths, unless packing followed another.</summary>
    internal SpringLaw LengthLaw => Swap is { KeptAt: null, StandsBy: var law } ? law : Law;
}
