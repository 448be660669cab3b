using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Values over a grid of places. Between the places they are taken to run straight; the spacing need not be even.</summary>
public sealed record MapGrid
{
    /// <summary>Places along x, shape (nx), at least two, rising, in the unit of the x axis.</summary>
    public required ImmutableArray<double> Xs { get; init => field = Fitting(Rising(value, nameof(Xs)), Ys, Values); }

    /// <summary>Places along y, shape (ny), at least two, rising, in the unit of the y axis.</summary>
    public required ImmutableArray<double> Ys { get; init => field = Fitting(Rising(value, nameof(Ys)), Xs, Values); }

    /// <summary>Values, shape (ny, nx) with x running fastest, in the unit of the measure. NaN where there is none.</summary>
    public required ImmutableArray<double> Values
    {
        get;
        init
        {
            field = Drawable.Heights(value);
            Fitting(Xs, Ys, field);
        }
    }

    /// <summary>A grid from a table.</summary>
    /// <param name="xs">Places along x, shape (nx), rising.</param>
    /// <param name="ys">Places along y, shape (ny), rising.</param>
    /// <param name="values">Values, shape (ny, nx). NaN where there is none.</param>
    /// <exception cref="RefusedValueException">The shapes differ, the places do not rise or a value is infinite.</exception>
    public static MapGrid From(ReadOnlySpan<double> xs, ReadOnlySpan<double> ys, double[,] values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.GetLength(0) != ys.Length || values.GetLength(1) != xs.Length)
        {
            throw new RefusedValueException(
                "values of the map",
                $"{values.GetLength(0)} by {values.GetLength(1)}",
                $"{ys.Length} by {xs.Length}, a row for every y and a column for every x",
                "Give the table as (ny, nx).");
        }

        return new MapGrid { Xs = [.. xs], Ys = [.. ys], Values = [.. values.Cast<double>()] };
    }

    /// <summary>The value at a node.</summary>
    /// <param name="row">Index along y.</param>
    /// <param name="column">Index along x.</param>
    public double At(int row, int column) => Values[(row * Xs.Length) + column];

    private static ImmutableArray<double> Rising(ImmutableArray<double> places, string what)
    {
        places = Drawable.Places(places, what);
        for (var i = 1; i < places.Length; i++)
        {
            if (places[i] <= places[i - 1])
            {
                throw new RefusedValueException(
                    $"places of the map, {what}", $"{places[i]:G6} after {places[i - 1]:G6}", "rising", "Sort the places, and give each once.");
            }
        }

        return places.Length > 1
            ? places
            : throw new RefusedValueException(
                $"places of the map, {what}", $"{places.Length}", "at least 2", "A map needs two places in each direction.");
    }

    private static ImmutableArray<double> Fitting(ImmutableArray<double> places, ImmutableArray<double> across, ImmutableArray<double> values) =>
        places.IsDefault || across.IsDefault || values.IsDefault || places.Length * across.Length == values.Length
            ? places
            : throw new RefusedValueException(
                "values of the map",
                $"{values.Length}",
                $"{places.Length * across.Length}, one for every pair of places",
                "Give the table as (ny, nx).");
}
