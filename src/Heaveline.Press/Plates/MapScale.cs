using System.Globalization;
using Heaveline.Figures;
using Heaveline.Press.Colours;
using Heaveline.Press.Paper;
using Heaveline.Press.Scales;

namespace Heaveline.Press.Plates;

/// <summary>How a map turns values into bands, shades and lines. Inside, a logarithmic measure is its logarithm.</summary>
internal sealed class MapScale
{
    private readonly AxisScale kind;
    private readonly double middle;
    private readonly bool diverges, given;

    /// <summary>Chooses levels and range.</summary>
    /// <param name="panel">The map.</param>
    /// <param name="most">Levels at most, where none are given.</param>
    public MapScale(MapPanel panel, int most)
    {
        kind = panel.Value.Scale;
        diverges = panel.Middle is not null;
        given = !panel.Levels.IsEmpty;
        var known = panel.Grid.Values.Where(value => !double.IsNaN(value)).ToArray();
        Span = Span.Of(panel.Value, panel.Levels.IsEmpty || known.Length > 0 ? known : panel.Levels, rounded: false, parts: 1);
        Levels = panel.Levels.IsEmpty ? Chosen(Span, panel.Middle, most, kind) : [.. panel.Levels];
        (Low, High) = (Inner(Span.Low), Inner(Span.High));
        middle = panel.Middle is { } of ? Inner(of) : Low;
        Middle = panel.Middle;
    }

    /// <summary>Range of the scale, in the unit of the measure.</summary>
    public Span Span { get; }

    /// <summary>Values with a line, rising, in the unit of the measure.</summary>
    public double[] Levels { get; }

    /// <summary>The value both sides are told from.</summary>
    public double? Middle { get; }

    /// <summary>Ends of the range as they are mapped.</summary>
    public double Low { get; }

    /// <summary>Ends of the range as they are mapped.</summary>
    public double High { get; }

    /// <summary>A value as it is mapped.</summary>
    public double Inner(double value) => kind == AxisScale.Linear ? value : Math.Log(value);

    /// <summary>The shade of a band: 0 below the first level, k from the kth level on.</summary>
    public Colour ShadeOf(int band)
    {
        var from = band == 0 ? Math.Min(Low, Levels.Length > 0 ? Inner(Levels[0]) : Low) : Inner(Levels[band - 1]);
        var to = band == Levels.Length ? Math.Max(High, from) : Inner(Levels[band]);
        var at = (Math.Clamp(from, Low, High) + Math.Clamp(to, Low, High)) / 2.0;
        return diverges
            ? Shades.Diverging((at - middle) / Math.Max(1e-300, Math.Max(Math.Abs(High - middle), Math.Abs(Low - middle))))
            : Shades.Sequential((at - Low) / Math.Max(1e-300, High - Low));
    }

    /// <summary>The line of a level: solid from the middle up, dashed below it, heavier on it.</summary>
    public Stroke LineOf(double level)
    {
        var away = level - (Middle ?? double.NegativeInfinity);
        var onIt = Math.Abs(away) <= 1e-9 * Math.Max(Math.Abs(level), 1e-12);
        return new Stroke(Palette.Frame, onIt ? 1.1 : 0.5, away < 0.0 && !onIt ? Dash.Dashed : Dash.Solid);
    }

    /// <summary>The numbers of the levels, with as many decimals as all of them need, four at most after the first digit.</summary>
    public string[] Numbers()
    {
        if (Levels.Length == 0)
        {
            return [];
        }

        if (kind == AxisScale.Logarithmic)
        {
            // Levels that were given are few and short, each with the decimals it needs; chosen ones stand at whole powers.
            return given && Levels.All(level => level is >= 1e-3 and < 1e5)
                ? [.. Levels.Select(level => level.ToString("0.####", CultureInfo.InvariantCulture))]
                : Numeral.Of(new Ticks(Levels, 0.0));
        }

        var largest = Levels.Max(Math.Abs);
        var decimals = Enumerable.Range(0, 10).FirstOrDefault(d => Levels.All(level => Math.Abs(Math.Round(level, d) - level) <= 1e-5 * largest), 10);
        return decimals > 4 || largest >= 1e6
            ? Numeral.Of(new Ticks(Levels, Math.Pow(10.0, -decimals)))
            : [.. Levels.Select(level => Numeral.Of(level, Math.Pow(10.0, -decimals)))];
    }

    private static double[] Chosen(Span span, double? middle, int most, AxisScale scale)
    {
        if (scale == AxisScale.Logarithmic)
        {
            var values = Ticks.Of(span.Low, span.High, most, scale).Values.AsEnumerable();
            return [.. Within(
                middle is { } of ? values.Where(value => Math.Abs(value - of) > 1e-9 * of).Append(of).Order() : values, span)];
        }

        var from = middle ?? 0.0;
        return [.. Within(Ticks.Of(span.Low - from, span.High - from, most).Values.Select(value => value + from), span)];
    }

    // A level on the very edge of the range has no line.
    private static IEnumerable<double> Within(IEnumerable<double> levels, Span span) =>
        levels.Where(level => level > span.Low + (1e-9 * (span.High - span.Low)) && level < span.High - (1e-9 * (span.High - span.Low)));
}
