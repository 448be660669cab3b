using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>A plank, slat or cable cover: level top, straight edges.</summary>
public sealed record Plank : Obstacle
{
    /// <summary>Height, above 0, at most 1 m.</summary>
    public required Amount<Length> Height
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, "Give the thickness of the plank."), 0.0, Tallest, "Give the thickness of the plank.");
    }

    /// <summary>Length along the road, both edges included, above 0, at most 1 km.</summary>
    public required Amount<Length> Length
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, "Give its length along the road."), 0.0, Longest, "Give its length along the road.");
    }

    /// <summary>Length of each edge, 0 for sharp ones (which no damped tyre without a contact length can take), at most half the length.</summary>
    public required Amount<Length> Edge { get; init => field = Checked.NotNegative(value, "Give the distance over which an edge rises, or 0."); }

    /// <inheritdoc/>
    public override string Shape => "plank";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Height)} high and {Metres(Length)} long, {EdgeWords(Edge)}";

    /// <inheritdoc/>
    public override double OverallLength => Length.Si;

    /// <inheritdoc/>
    public override Profile Draw() => LevelWithEdges(Shape, Height.Si, Length, Edge);
}
