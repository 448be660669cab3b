using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>A speed table: a straight ramp up, a level plateau, a straight ramp down.</summary>
public sealed record FlatTopHump : Obstacle
{
    private const string RampAdvice = "Give the length of the ramp; height times 10 for a ramp of 1:10.";

    /// <summary>Height of the plateau, above 0, at most 1 m.</summary>
    public required Amount<Length> Height
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, "Give the height of the plateau."), 0.0, Tallest, "Give the height of the plateau.");
    }

    /// <summary>Length of the level part, 0 to 1 km.</summary>
    public required Amount<Length> Plateau { get; init => field = Checked.Within(value, 0.0, Longest, "Give the length of the level part."); }

    /// <summary>Length of the ramp up, above 0, at most 1 km.</summary>
    public required Amount<Length> RampUp
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, RampAdvice), 0.0, Longest, RampAdvice);
    }

    /// <summary>Length of the ramp down, above 0, at most 1 km.</summary>
    public required Amount<Length> RampDown
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, RampAdvice), 0.0, Longest, RampAdvice);
    }

    /// <inheritdoc/>
    public override string Shape => "flat-top hump";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Height)} high, plateau {Metres(Plateau)}, ramps {Metres(RampUp)} up and {Metres(RampDown)} down";

    /// <inheritdoc/>
    public override double OverallLength => RampUp.Si + Plateau.Si + RampDown.Si;

    /// <inheritdoc/>
    public override Profile Draw() => Table(Height.Si, RampUp.Si, Plateau.Si, RampDown.Si);
}
