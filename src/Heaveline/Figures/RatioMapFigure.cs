using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Figures;

/// <summary>
/// A measure over speed and a ratio of the rear to the front, such as that of their frequencies: where the rule holds, and where this car stands.
/// </summary>
public static class RatioMapFigure
{
    // Share of the middle, as the rules are judged.
    private const double Unnoticed = RuleMap.Threshold;

    // A quotient below this is drawn as this: a logarithm has no place for nothing.
    private const double LeastRatio = 1e-3;

    /// <summary>The levels of every map of a quotient, about as far apart in ratio, so that a shade means the same on all of them.</summary>
    public static ImmutableArray<double> RatioLevels { get; } = [0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.25, 1.5, 2.0];

    /// <summary>The figure, page wide.</summary>
    /// <param name="title">The title.</param>
    /// <param name="caption">The text under it: car, load, road.</param>
    /// <param name="signNote">Which way the signs point. Blank for none.</param>
    /// <param name="speeds">Speeds, shape (nx), km/h, rising.</param>
    /// <param name="ratios">Ratios rear over front, shape (ny), –, rising.</param>
    /// <param name="values">The measure, shape (ny, nx), in its unit; NaN where there is none.</param>
    /// <param name="measureLabel">Name of the measure ("settling against equal frequencies").</param>
    /// <param name="unit">Its unit. Blank for a plain number.</param>
    /// <param name="middle">
    /// The value that means "no difference"; values within 3 % of it are hatched. 1 of a plain number: a quotient, drawn in ratios. Null for none.
    /// </param>
    /// <param name="carMarks">The car's own ratio by load state: each a line across the map.</param>
    /// <param name="bestCurve">The ratio with the best value at each speed, shape (nx); NaN where there is none. Empty: no curve.</param>
    /// <param name="ratioLabel">What the ratio is, or another thing that is turned.</param>
    /// <param name="ratioUnit">Its unit. Blank for a plain number.</param>
    /// <param name="closedForms">Curves to compare the best one with.</param>
    /// <param name="marks">Places on the map with a name.</param>
    /// <param name="zones">Nodes without a value that mean something.</param>
    /// <exception cref="RefusedValueException">The shapes differ, or places do not rise.</exception>
    public static Figure Of(
        string title,
        string caption,
        string signNote,
        ReadOnlySpan<double> speeds,
        ReadOnlySpan<double> ratios,
        double[,] values,
        string measureLabel,
        string unit,
        double? middle,
        ImmutableArray<(string Name, double Ratio)> carMarks,
        ReadOnlySpan<double> bestCurve,
        string ratioLabel = "natural frequency, rear over front",
        string ratioUnit = "",
        ImmutableArray<Trace> closedForms = default,
        ImmutableArray<Mark> marks = default,
        ImmutableArray<MapZone> zones = default)
    {
        var grid = MapGrid.From(speeds, ratios, values);
        var isQuotient = middle == 1.0 && unit.Length == 0;
        grid = isQuotient ? grid with { Values = [.. grid.Values.Select(v => v < LeastRatio ? LeastRatio : v)] } : grid;
        var traces = new List<Trace>();
        if (!bestCurve.IsEmpty)
        {
            traces.Add(Trace.From("best", speeds, bestCurve, Pen.Of(Ink.Third) with { Width = 1.6 }));
        }

        traces.AddRange(Drawable.Any(closedForms));
        // Dashes tell the load states apart, in the order given; contour lines are thinner than all of them.
        Dash[] dashes = [Dash.DashDot, Dash.Dotted, Dash.Dashed, Dash.Solid];
        traces.AddRange(Drawable.Any(carMarks).Where(car => car.Ratio >= grid.Ys[0] && car.Ratio <= grid.Ys[^1]).Select((car, i) =>
            Trace.From(
                car.Name, [grid.Xs[0], grid.Xs[^1]], [car.Ratio, car.Ratio], Pen.Of(Ink.First, dashes[i % dashes.Length]) with { Width = 1.3 })));
        return new Figure
        {
            Title = title,
            AltText = $"Map of {measureLabel} over speed and {ratioLabel}.{Extremes(grid, unit)}{Standing(carMarks)}{Beside(closedForms, marks)}",
            Caption = caption,
            SignNote = middle is { } centre
                ? FormattableString.Invariant($"{signNote} Lines: solid above {centre:G4}, dashed below.").Trim()
                : signNote,
            Size = FigureSize.Page,
            Panels =
            [
                new MapPanel
                {
                    X = new Axis { Label = "speed", Unit = "km/h" },
                    Y = new Axis { Label = ratioLabel, Unit = ratioUnit },
                    Value = isQuotient
                        ? new Axis { Label = measureLabel, Unit = unit, Scale = AxisScale.Logarithmic, From = 0.43, To = 2.33 }
                        : new Axis { Label = measureLabel, Unit = unit },
                    Levels = isQuotient ? RatioLevels : [],
                    Grid = grid,
                    Zones = Drawable.Any(zones),
                    Middle = middle,
                    Hatch = middle is { } of && of != 0.0
                        ? new MapHatch
                        {
                            From = of - (Unnoticed * Math.Abs(of)),
                            To = of + (Unnoticed * Math.Abs(of)),
                            Label = "makes no difference (within 3 %)",
                        }
                        : null,
                    Traces = [.. traces],
                    Marks = Drawable.Any(marks),
                },
            ],
        };
    }

    private static string Extremes(MapGrid grid, string unit)
    {
        var best = Enumerable.Range(0, grid.Values.Length).Where(i => !double.IsNaN(grid.Values[i])).OrderBy(i => grid.Values[i]).ToArray();
        string Place(int i) => string.Create(CultureInfo.InvariantCulture, $"{grid.Values[i]:G3} {unit}").TrimEnd()
            + FormattableString.Invariant($" at {grid.Xs[i % grid.Xs.Length]:G3} km/h and ratio {grid.Ys[i / grid.Xs.Length]:G3}");
        return best.Length == 0 ? "" : $" Lowest {Place(best[0])}, highest {Place(best[^1])}.";
    }

    private static string Standing(ImmutableArray<(string Name, double Ratio)> cars) =>
        cars.IsDefaultOrEmpty
            ? ""
            : $" The car stands at {string.Join(", ", cars.Select(car => FormattableString.Invariant($"{car.Ratio:F2} ({car.Name})")))}.";

    private static string Beside(ImmutableArray<Trace> closedForms, ImmutableArray<Mark> marks) =>
        (closedForms.IsDefaultOrEmpty
            ? ""
            : $" Closed forms beside the best ratio: {string.Join(", ", closedForms.Select(form => form.Name).Where(name => name.Length > 0))}.")
        + (marks.IsDefaultOrEmpty ? "" : $" Marked on the car's own line: {string.Join(", ", marks.Select(mark => mark.Label))}.");
}
