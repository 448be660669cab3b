using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>Half a sine wave, h sin(πx/L): it begins and ends at a slope.</summary>
public sealed record HalfSine : Obstacle
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
    public override string Shape => "half-sine bump";

    /// <inheritdoc/>
    public override string Sizes => $"{Millimetres(Height)} high and {Metres(Length)} long";

    /// <inheritdoc/>
    public override double OverallLength => Length.Si;

    /// <inheritdoc/>
    public override Profile Draw()
    {
        var h = Height.Si;
        var k = Math.PI / Length.Si;
        return new Outline(0.0, 0.0)
            .CurveTo(Length.Si, 0.0, x => h * Math.Sin(k * x), x => h * k * Math.Cos(k * x), h * k * k * k * k)
            .Close();
    }
}
