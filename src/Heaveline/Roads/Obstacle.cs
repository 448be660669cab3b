using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// One obstacle on a level road, beginning at x = 0. Each size is checked where it is set; sizes that must fit one another are checked when the
/// obstacle is drawn, so that they may be set in any order.
/// </summary>
public abstract record Obstacle
{
    // Taller than this is a wall, or a height given in the wrong unit, m.
    private protected const double Tallest = 1.0;

    // Longer than this is a road, or a length given in the wrong unit, m.
    private protected const double Longest = 1000.0;

    /// <summary>Its name in the trade ("round-top hump").</summary>
    public abstract string Shape { get; }

    /// <summary>Its sizes in words, for captions.</summary>
    public abstract string Sizes { get; }

    /// <summary>Length along the road from its beginning to its end, m; 0 for a sharp step.</summary>
    public abstract double OverallLength { get; }

    /// <summary>Its height over the distance, from x = 0 to <see cref="OverallLength"/>.</summary>
    /// <exception cref="RefusedValueException">Its sizes do not fit one another.</exception>
    public abstract Profile Draw();

    private protected static string Millimetres(Amount<Length> length) => FormattableString.Invariant($"{In.Millimetres.Of(length.Si):0.###} mm");

    private protected static string Metres(Amount<Length> length) => FormattableString.Invariant($"{length.Si:0.####} m");

    private protected static string EdgeWords(Amount<Length> edge) => edge.Si > 0.0 ? $"edges over {Millimetres(edge)}" : "sharp edges";

    // Up (or down) over one edge, level, back over the other.
    private protected static Profile Table(double height, double first, double level, double last) =>
        new Outline(0.0, 0.0).LineTo(first, height).LineTo(first + level, height).LineTo(first + level + last, 0.0).Close();

    private protected static Profile LevelWithEdges(string shape, double height, Amount<Length> length, Amount<Length> edge) =>
        2.0 * edge.Si <= length.Si
            ? Table(height, edge.Si, length.Si - (2.0 * edge.Si), edge.Si)
            : throw new RefusedValueException(
                $"edge of the {shape}",
                edge.ToString(),
                $"at most half its length of {length}",
                "The length counts from foot to foot, both edges included.");
}
