using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>A straight slope to another level, and level from there on.</summary>
public sealed record Ramp : Obstacle
{
    /// <summary>Rise of the road, −10 to 10 m.</summary>
    public required Amount<Length> Height
    {
        get;
        init => field = Checked.Within(value, -10.0, 10.0, "Give the rise of the road, negative for a slope down.");
    }

    /// <summary>Distance over which it rises, above 0, at most 1 km.</summary>
    public required Amount<Length> Length
    {
        get;
        init => field = Checked.Within(
            Checked.Positive(value, "Give the distance over which the ramp rises; a step may be sharp."),
            0.0,
            Longest,
            "Give the distance over which the ramp rises; a step may be sharp.");
    }

    /// <inheritdoc/>
    public override string Shape => "ramp";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Height)} high and {Metres(Length)} long";

    /// <inheritdoc/>
    public override double OverallLength => Length.Si;

    /// <inheritdoc/>
    public override Profile Draw() => new Outline(0.0, 0.0).LineTo(Length.Si, Height.Si).Close();
}
