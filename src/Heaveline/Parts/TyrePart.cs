using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>A tyre, and how it differs in mass and size from the one that stands in the car.</summary>
public sealed record TyrePart : Part
{
    /// <summary>The tyre as a spring and damper.</summary>
    public required Tyre Tyre { get; init; }

    /// <summary>How much heavier one is than the one that it replaces, rim included where that changes too, kg; lighter is negative.</summary>
    public Amount<Mass> Unsprung { get; init => field = Checked.Within(value, -100.0, 100.0, "Weigh one wheel of each."); }

    /// <summary>How much larger its free radius is than that of the one that it replaces, m; null when nobody said.</summary>
    public Amount<Length>? RadiusChange
    {
        get;
        init => field = value is { } v ? Checked.Within(v, -0.3, 0.3, "Half the difference of the outer diameters.") : null;
    }

    /// <inheritdoc/>
    public override PartSort Sort => PartSort.Tyre;

    /// <inheritdoc/>
    public override IReadOnlyList<PartOption> Options =>
    [
        new PartOption(this)
        {
            Tyre = Tyre with
            {
                Rate = Own(Tyre.Rate, "rate"),
                Damping = Own(Tyre.Damping, "damping"),
                ContactLength = Own(Tyre.ContactLength, "contact length"),
            },
        },
    ];
}
