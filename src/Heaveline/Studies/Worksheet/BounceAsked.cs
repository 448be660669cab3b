using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Swings counted over a time, to be worked out.</summary>
public sealed record BounceAsked : SheetAsked
{
    /// <summary>Whole swings counted, down and up again.</summary>
    public required Amount<Plain> Swings { get; init; }

    /// <summary>Time they took, s.</summary>
    public required Amount<Time> Time { get; init; }

    /// <summary>Mass that bounces, kg; null when not known.</summary>
    public Amount<Mass>? Mass { get; init; }

    /// <summary>Rate of all tyres under it together, N/m; null when not known.</summary>
    public Amount<Stiffness>? Tyres { get; init; }
}
