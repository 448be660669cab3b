using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>Draws a profile from left to right: straight pieces, jumps, and curves in as many cubic pieces as keep them within 1e-9 m.</summary>
internal sealed class Outline
{
    // Error allowed in a curve between its knots, m.
    private const double Tolerance = 1e-9;

    // Ten thousand waves with room to spare. Sizes near the least number that there is ask for more pieces than there are numbers.
    private const int MostPieces = 5_000_000;

    private readonly List<double> knots = [];
    private readonly List<double> coefficients = [];
    private double x;
    private double height;

    internal Outline(double x, double height)
    {
        this.x = x;
        this.height = height;
    }

    /// <summary>A straight line to a distance and height; over no distance, a jump.</summary>
    internal Outline LineTo(double toX, double toHeight)
    {
        var width = toX - x;
        if (width > 0.0 || toHeight != height)
        {
            knots.Add(x);
            coefficients.AddRange([height, width > 0.0 ? (toHeight - height) / width : 0.0, 0.0, 0.0]);
        }

        (x, height) = (toX, toHeight);
        return this;
    }

    /// <summary>A curve to a distance and height.</summary>
    /// <param name="toX">Where it ends, m, past where it begins.</param>
    /// <param name="toHeight">Height at its end, m, as it should be without rounding.</param>
    /// <param name="heightAt">Height over x.</param>
    /// <param name="slopeAt">Slope over x.</param>
    /// <param name="fourth">A bound of |fourth derivative|, 1/m³.</param>
    /// <exception cref="RefusedValueException">It is too short for its height to be drawn.</exception>
    internal Outline CurveTo(double toX, double toHeight, Func<double, double> heightAt, Func<double, double> slopeAt, double fourth)
    {
        var start = x;
        var pieces = Cubic.Pieces(toX - start, fourth, Tolerance);
        if (pieces > MostPieces)
        {
            throw new RefusedValueException(
                "length of a curve of the road",
                FormattableString.Invariant($"{toX - start:G4} m"),
                "long enough for its height to be drawn over it",
                "Give lengths and heights as they are on the road.");
        }

        var width = (toX - start) / pieces;
        for (var piece = 1; piece <= pieces; piece++)
        {
            var end = piece == pieces ? toX : start + (piece * width);
            var endHeight = piece == pieces ? toHeight : heightAt(end);
            knots.Add(x);
            Cubic.Append(coefficients, end - x, height, slopeAt(x), endHeight, slopeAt(end));
            (x, height) = (end, endHeight);
        }

        return this;
    }

    /// <summary>The profile, level from here on.</summary>
    internal Profile Close()
    {
        knots.Add(x);
        coefficients.AddRange([height, 0.0, 0.0, 0.0]);
        return Profile.FromCubics([.. knots], [.. coefficients]);
    }
}
