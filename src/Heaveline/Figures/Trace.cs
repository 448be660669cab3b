using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>One curve. Its name is printed at its right-hand end, in its own ink.</summary>
public sealed record Trace
{
    /// <summary>The name at the end of the curve. Blank for none.</summary>
    public string Name { get; init => field = value ?? ""; } = "";

    /// <summary>Places along x, shape (n), in the unit of the x axis, finite.</summary>
    public required ImmutableArray<double> Xs { get; init => field = Drawable.AsLongAs(Drawable.Places(value), Ys); }

    /// <summary>Heights, shape (n), in the unit of the y axis. NaN lifts the pen.</summary>
    public required ImmutableArray<double> Ys { get; init => field = Drawable.AsLongAs(Drawable.Heights(value), Xs); }

    /// <summary>What the curve is drawn with.</summary>
    public Pen Pen { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = new();

    /// <summary>What lies above it, where the curve is the border of a class ("C"). Blank where it is none.</summary>
    public string Above { get; init => field = value ?? ""; } = "";

    /// <summary>What lies below it, where the curve is the border of a class.</summary>
    public string Below { get; init => field = value ?? ""; } = "";

    /// <summary>A curve from two columns of equal length.</summary>
    /// <param name="name">The name at its end. Blank for none.</param>
    /// <param name="xs">Places, shape (n).</param>
    /// <param name="ys">Heights, shape (n). NaN lifts the pen.</param>
    /// <param name="pen">What it is drawn with; null for the first ink, solid.</param>
    /// <exception cref="RefusedValueException">The columns differ in length or hold an infinite number.</exception>
    public static Trace From(string name, ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, Pen? pen = null) =>
        new() { Name = name, Xs = [.. xs], Ys = [.. ys], Pen = pen ?? new Pen() };
}
