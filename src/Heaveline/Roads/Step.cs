using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>A change of level that stays: a kerb up, or down with a negative height. Its edge is straight.</summary>
public sealed record Step : Obstacle
{
    /// <summary>Rise of the road, −1 to 1 m.</summary>
    public required Amount<Length> Height
    {
        get;
        init => field = Checked.Within(value, -Tallest, Tallest, "Give the rise of the road, negative for a step down.");
    }

    /// <summary>Distance over which it rises, 0 for a sharp step (which no damped tyre without a contact length can take).</summary>
    public Amount<Length> Edge { get; init => field = Checked.Within(value, 0.0, Longest, "Give the distance over which the step rises, or 0."); }

    /// <inheritdoc/>
    public override string Shape => "step";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Height)} high, {(Edge.Si > 0.0 ? $"edge over {Millimetres(Edge)}" : "sharp edge")}";

    /// <inheritdoc/>
    public override double OverallLength => Edge.Si;

    /// <inheritdoc/>
    public override Profile Draw() => new Outline(0.0, 0.0).LineTo(Edge.Si, Height.Si).Close();
}
