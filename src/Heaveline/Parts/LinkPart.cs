using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>
/// A common spring and damper that join front and rear of each side; it carries nothing in the state weighed. One buys both sides at once.
/// </summary>
public sealed record LinkPart : Part
{
    /// <summary>The link, free in the reference state.</summary>
    public required ElasticLink Link
    {
        get;
        init => field = value is { Carried.Si: 0.0 } and not { Rate.Si: 0.0, Damping.Si: 0.0 }
            ? value
            : throw new RefusedValueException(
                "link", "one that does nothing, or carries a force in the state weighed", "one with rate or damping that is set there without force",
                "Set it with the car standing as it was weighed.");
    }

    /// <inheritdoc/>
    public override PartSort Sort => PartSort.Link;

    /// <inheritdoc/>
    public override IReadOnlyList<PartOption> Options =>
    [
        new PartOption(this)
        {
            Link = Link with
            {
                Rate = Own(Link.Rate, "rate"),
                Damping = Own(Link.Damping, "damping"),
                FrontRatio = Own(Link.FrontRatio, "front ratio"),
                RearRatio = Own(Link.RearRatio, "rear ratio"),
            },
        },
    ];
}
