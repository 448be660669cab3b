using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// A hole with a level bottom and straight edges. The tyre follows the profile: bridging over a short hole is the contact length's business.
/// </summary>
public sealed record Pothole : Obstacle
{
    /// <summary>Depth, above 0, at most 1 m.</summary>
    public required Amount<Length> Depth
    {
        get;
        init => field = Checked.Within(
            Checked.Positive(value, "Give the depth as a positive number."), 0.0, Tallest, "Give the depth as a positive number.");
    }

    /// <summary>Length from rim to rim, both edges included, above 0, at most 1 km.</summary>
    public required Amount<Length> Length
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, "Give the length from rim to rim."), 0.0, Longest, "Give the length from rim to rim.");
    }

    /// <summary>Length of each edge, 0 for sharp ones (which no damped tyre without a contact length can take), at most half the length.</summary>
    public required Amount<Length> Edge { get; init => field = Checked.NotNegative(value, "Give the distance over which an edge falls, or 0."); }

    /// <inheritdoc/>
    public override string Shape => "pothole";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Depth)} deep and {Metres(Length)} long, {EdgeWords(Edge)}";

    /// <inheritdoc/>
    public override double OverallLength => Length.Si;

    /// <inheritdoc/>
    public override Profile Draw() => LevelWithEdges(Shape, -Depth.Si, Length, Edge);
}
