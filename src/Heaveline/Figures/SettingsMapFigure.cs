using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A measure over any two settings of a car, such as damping and stiffness, with variants as points on it.</summary>
public static class SettingsMapFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="title">The title.</param>
    /// <param name="caption">The text under it.</param>
    /// <param name="signNote">Which way the signs point. Blank for none.</param>
    /// <param name="x">The first setting.</param>
    /// <param name="y">The second setting.</param>
    /// <param name="value">The measure.</param>
    /// <param name="grid">Its values over both settings.</param>
    /// <param name="middle">The value that both sides are told from; null for shades from light to dark.</param>
    /// <param name="variants">Cars on the map: name and both settings.</param>
    /// <exception cref="RefusedValueException">A logarithmic axis meets a value of zero or below.</exception>
    public static Figure Of(
        string title,
        string caption,
        string signNote,
        Axis x,
        Axis y,
        Axis value,
        MapGrid grid,
        double? middle,
        ImmutableArray<(string Name, double X, double Y)> variants)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        ArgumentNullException.ThrowIfNull(value);
        return new Figure
        {
            Title = title,
            AltText = $"Map of {value.Label} over {x.Label} and {y.Label}.",
            Caption = caption,
            SignNote = signNote,
            Size = FigureSize.Page,
            Panels =
            [
                new MapPanel
                {
                    X = x, Y = y, Value = value, Grid = grid, Middle = middle,
                    Marks = [.. Drawable.Any(variants).Select(variant => new Mark { X = variant.X, Y = variant.Y, Label = variant.Name })],
                },
            ],
        };
    }
}
