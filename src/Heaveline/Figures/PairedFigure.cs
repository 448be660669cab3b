using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Numbers before a change and after it, a panel a unit, with intervals where they are known: what is gained and what is paid.</summary>
public static class PairedFigure
{
    private const double LeastSpan = 0.2;

    /// <summary>The figure, page wide.</summary>
    /// <param name="title">The title.</param>
    /// <param name="caption">Which car, under which load, in which state.</param>
    /// <param name="before">What stands before the change.</param>
    /// <param name="after">What stands after it; null where there is but one.</param>
    /// <param name="values">The numbers, in the order of a table.</param>
    /// <exception cref="RefusedValueException">There is no number.</exception>
    public static Figure Of(string title, string caption, string before, string? after, IReadOnlyList<PairedValue> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count == 0)
        {
            throw new RefusedValueException("numbers of the figure", "none", "at least one", "Give the figure a number.");
        }

        var worse = values.Where(v => v.IsWorse).Select(v => v.Name).ToList();
        var hasIntervals = values.Any(v => v.Before.Low is not null || v.After?.Low is not null);
        return new Figure
        {
            Title = title,
            AltText = $"Dots of {values.Count} numbers, {before}{(after is null ? "" : $" and {after}")}, "
                + $"in {values.Select(v => v.Unit).Distinct().Count()} panels by unit. {Worse(worse, after)}".TrimEnd(),
            Caption = $"{caption} {Worse(worse, after)}".TrimEnd(),
            SignNote = (after is null
                    ? ""
                    : $"Upper: {before}; lower: {after}. ▲: the lower is worse by more than 1 %, for numbers that have a better side.")
                + (hasIntervals ? " Bars: nine times out of ten the number lies between their ends, within the stated doubts." : ""),
            Size = FigureSize.Page,
            // The two are named over the first panel; the same inks stand in the same order under it.
            Panels =
            [
                .. values.GroupBy(v => v.Unit)
                    .Select((unit, k) => PanelOf(unit.Key, [.. unit], k == 0 ? before : "", after is null || k == 0 ? after : "")),
            ],
        };
    }

    private static string Worse(List<string> worse, string? after) =>
        after is null ? ""
        : worse.Count == 0 ? $"No number with a better side is worse {With(after)}."
        : $"Worse {With(after)}: {string.Join("; ", worse)}.";

    // What is there may be named with its word: "with the link".
    private static string With(string after) => after.StartsWith("with ", StringComparison.Ordinal) ? after : $"with {after}";

    // The inks of two cars over time: what a change is held against is grey, what is asked about has the cool ink (CompareFigure).
    private static CategoryPanel PanelOf(string unit, IReadOnlyList<PairedValue> values, string before, string? after) => new()
    {
        Value = AxisOf(values) with { Label = values.Count == 1 ? values[0].Name : "value", Unit = unit == "–" ? "" : unit },
        Style = CategoryStyle.Dots,
        Categories =
        [
            .. values.Select(v => new Category
            {
                Name = v.IsWorse ? $"▲ {v.Name}" : v.Name,
                Values =
                [
                    v.Before with { Series = before, Ink = after is null ? Ink.First : Ink.Fourth },
                    .. v.After is { } then && after is not null ? new[] { then with { Series = after, Ink = Ink.First } } : [],
                ],
            }),
        ],
    };

    // Next to no difference must look so: an axis spans at least a fifth of what it shows.
    private static Axis AxisOf(IReadOnlyList<PairedValue> values)
    {
        double[] all =
        [
            .. values.SelectMany(v => new[] { v.Before, v.After }).OfType<CategoryValue>()
                .SelectMany(v => new[] { v.Value, v.Low ?? v.Value, v.High ?? v.Value }),
        ];
        var (low, high) = (all.Min(), all.Max());
        var least = LeastSpan * Math.Max(Math.Abs(low), Math.Abs(high));
        return high - low >= least || least == 0.0
            ? new Axis { Label = "value" }
            : new Axis { Label = "value", From = 0.5 * (low + high - least), To = 0.5 * (low + high + least) };
    }
}
