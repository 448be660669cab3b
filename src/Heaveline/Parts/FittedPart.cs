using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>A part, as it is set, at a place of a car.</summary>
/// <param name="Place">Where.</param>
/// <param name="Option">What.</param>
public sealed record FittedPart(PartPlace Place, PartOption Option)
{
    /// <summary>Packing under each spring, or how far an adjustable seat is raised, m; lowered it is negative.</summary>
    public Amount<Length> Packing { get; init; }

    /// <summary>Whether the part stands in the car there already, and is only set anew: then it costs nothing.</summary>
    public bool IsThere { get; init; }
}
