namespace Heaveline.Studies;

/// <summary>A tolerance that parts can be had to, and what it costs a kit.</summary>
/// <param name="HalfWidth">Half-width: a share of the rate or force (–), or m of height.</param>
/// <param name="Price">What it costs a kit, in whatever money; null where nobody said.</param>
public sealed record ToleranceLevel(double HalfWidth, double? Price = null);
