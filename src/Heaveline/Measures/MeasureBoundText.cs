using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>
/// Bounds as they are written: "ratio at least 1.05", "settling-rms-pitch at most 0.4 °", and as they are printed: "rear/front frequency ratio at
/// least 1.050". A number is named by its key, with hyphens or blanks, or as tables, sentences and axes name it, in large letters or small.
/// </summary>
public static partial class MeasureBoundText
{
    private const int Few = 6;

    /// <summary>Reads a bound; null where it is none, with what is wrong and how it is written, a sentence.</summary>
    /// <param name="words">The words.</param>
    /// <param name="known">The numbers that may be bound, by their keys.</param>
    public static (MeasureBound? Bound, string Problem) Read(string words, IReadOnlyList<Measure> known)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(known);
        if (Shape().Match(words) is not { Success: true } match)
        {
            return (null, $"'{words}' does not say what is at least or at most so much: write it as \"ratio at least 1.05\".");
        }

        var key = match.Groups["key"].Value;
        if (Named(key, known) is not [var measure])
        {
            if (Named(key, known) is { Count: > 1 } several)
            {
                return (null, $"'{key}' is what several numbers are called: say which, {string.Join(", ", several.Select(m => m.Key))}.");
            }

            var near = NearestWord.Of(Plainly(key).Replace(' ', '-'), known.Select(m => m.Key));
            return (null, $"'{key}' is no number that can be asked for here.{(near is null ? "" : $" Did you mean {near}?")} "
                + $"The keys are those of JSON and of the glossary: {string.Join(", ", known.Take(Few).Select(m => m.Key))} and others.");
        }

        var value = match.Groups["value"].Value.Trim();
        if (Number(value, measure.Unit) is not { } shown)
        {
            var unit = measure.Unit.Symbol == "–" ? "a number without a unit" : $"a number in {measure.Unit.Symbol}";
            return (null, $"'{value}' is not how the {measure.Name} is given: write {unit}.");
        }

        return (new MeasureBound { Measure = measure, IsLeast = IsSame(match.Groups["way"].Value, "least"), Limit = measure.Unit.ToSi(shown) }, "");
    }

    /// <summary>The numbers that some words name; none, one, or those that share a name.</summary>
    /// <param name="words">A key, or a name as it is printed.</param>
    /// <param name="known">The numbers that may be bound.</param>
    public static IReadOnlyList<Measure> Named(string words, IReadOnlyList<Measure> known)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(known);
        var plain = Plainly(words);
        return known.FirstOrDefault(m => m.Key.Replace('-', ' ') == plain.Replace('-', ' ')) is { } own
            ? [own]
            : [.. known.Where(m => NamesOf(m).Any(name => Plainly(name) == plain))];
    }

    /// <summary>What a number is called beside its key, as it is printed.</summary>
    /// <param name="measure">The number.</param>
    public static IEnumerable<string> NamesOf(Measure measure)
    {
        ArgumentNullException.ThrowIfNull(measure);
        return new[] { measure.Label, measure.Name, measure.ShortLabel, measure.CaptionLabel, measure.Heading }.Distinct(StringComparer.Ordinal);
    }

    private static string Plainly(string words) => Blanks().Replace(words.Trim(), " ").ToLowerInvariant();

    private static bool IsSame(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static double? Number(string value, ShownUnit unit)
    {
        if (unit.Symbol == "–")
        {
            return QuantityText.Number(value);
        }

        foreach (var symbol in new[] { unit.Symbol, unit.Plain })
        {
            if (value.EndsWith(symbol, StringComparison.Ordinal))
            {
                return QuantityText.Number(value[..^symbol.Length].Trim());
            }
        }

        // Another unit of the same kind is turned into the one shown; a bare number of what has a unit is none.
        return QuantityText.IsBare(value) ? null : QuantityText.InBox(value, unit.Symbol).Value;
    }

    [GeneratedRegex(
        @"^\s*(?<key>\S.*?)\s+at\s+(?<way>least|most)\s+(?<value>.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Shape();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}
