using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>Bounds as they are written: "ratio at least 1.05", "settling-rms-pitch at most 0.4 °".</summary>
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
        if (known.FirstOrDefault(m => m.Key == key) is not { } measure)
        {
            var near = NearestWord.Of(key, known.Select(m => m.Key));
            return (null, $"'{key}' is no number that can be asked for here.{(near is null ? "" : $" Did you mean {near}?")} "
                + $"The keys are those of JSON and of the glossary: {string.Join(", ", known.Take(Few).Select(m => m.Key))} and others.");
        }

        var value = match.Groups["value"].Value.Trim();
        if (Number(value, measure.Unit) is not { } shown)
        {
            var unit = measure.Unit.Symbol == "–" ? "a number without a unit" : $"a number in {measure.Unit.Symbol}";
            return (null, $"'{value}' is not how the {measure.Name} is given: write {unit}.");
        }

        return (new MeasureBound { Measure = measure, IsLeast = match.Groups["way"].Value == "least", Limit = measure.Unit.ToSi(shown) }, "");
    }

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

    [GeneratedRegex(@"^\s*(?<key>[a-z0-9-]+)\s+at\s+(?<way>least|most)\s+(?<value>.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
