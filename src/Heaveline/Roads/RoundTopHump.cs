using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// A speed hump whose section is one circular arc through both feet and the top: R = (L²/4 + h²)/(2h) (the Watts profile, 3.7 m long and
/// 75 to 100 mm high in the trials of TRL Report 377).
/// </summary>
public sealed record RoundTopHump : Obstacle
{
    /// <summary>Height of the top, above 0, at most 1 m and at most a quarter of the length.</summary>
    public required Amount<Length> Height
    {
        get;
        init => field = Checked.Within(Checked.Positive(value, "Give the height of the top."), 0.0, Tallest, "Give the height of the top.");
    }

    /// <summary>Length from foot to foot, above 0, at most 1 km.</summary>
    public required Amount<Length> Length
    {
        get;
        init => field = Checked.Within(
            Checked.Positive(value, "Give the length from foot to foot."), 0.0, Longest, "Give the length from foot to foot.");
    }

    /// <summary>Radius of the arc, m.</summary>
    public double Radius => ((Length.Si * Length.Si / 4.0) + (Height.Si * Height.Si)) / (2.0 * Height.Si);

    /// <inheritdoc/>
    public override string Shape => "round-top hump";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Height)} high and {Metres(Length)} long";

    /// <inheritdoc/>
    public override double OverallLength => Length.Si;

    /// <inheritdoc/>
    public override Profile Draw()
    {
        if (Height.Si > Length.Si / 4.0)
        {
            throw new RefusedValueException(
                "height of the round-top hump",
                Height.ToString(),
                $"at most a quarter of its length of {Length}",
                "An arc steeper than that at its feet (53°) is a wall to a wheel: give a longer hump.");
        }

        var r = Radius;
        var middle = Length.Si / 2.0;
        var centre = r - Height.Si;
        double Up(double x) => Math.Sqrt((r * r) - ((x - middle) * (x - middle)));

        // z⁗ = −3R²(R² + 4u²)/(R² − u²)^(7/2), u from the middle: greatest at the feet, where the square root is R − h.
        var fourth = 3.0 * r * r * ((r * r) + (4.0 * middle * middle)) / Math.Pow(centre, 7.0);
        return new Outline(0.0, 0.0)
            .CurveTo(Length.Si, 0.0, x => Up(x) - centre, x => (middle - x) / Up(x), fourth)
            .Close();
    }
}
