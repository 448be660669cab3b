using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>One whole cosine wave, (h/2)(1 − cos(2πx/L)), also called haversine or sinusoidal hump: it begins and ends level.</summary>
public sealed record Versine : Obstacle
{
    /// <summary>Height at its middle, −1 to 1 m; a dip is negative.</summary>
    public required Amount<Length> Height
    {
        get;
        init => field = Checked.Within(value, -Tallest, Tallest, "Give the height at the middle, negative for a dip.");
    }

    /// <summary>Length from foot to foot, above 0, at most 1 km.</summary>
    public required Amount<Length> Length
    {
        get;
        init => field = Checked.Within(
            Checked.Positive(value, "Give the length from foot to foot."), 0.0, Longest, "Give the length from foot to foot.");
    }

    /// <inheritdoc/>
    public override string Shape => "versine bump";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Height)} high and {Metres(Length)} long";

    /// <inheritdoc/>
    public override double OverallLength => Length.Si;

    /// <inheritdoc/>
    public override Profile Draw()
    {
        var a = Height.Si / 2.0;
        var k = 2.0 * Math.PI / Length.Si;
        return new Outline(0.0, 0.0)
            .CurveTo(Length.Si, 0.0, x => a * (1.0 - Math.Cos(k * x)), x => a * k * Math.Sin(k * x), a * k * k * k * k)
            .Close();
    }
}
