using System.Text.RegularExpressions;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Promises as they are written: "ratio at least 1.05", "rms-pitch at most 0.4 °".</summary>
internal static partial class TolerancePromiseText
{
    /// <summary>Reads a promise; null, and an objection, where it is none.</summary>
    /// <param name="reader">Told what is wrong.</param>
    /// <param name="choice">The choice that it was given for.</param>
    /// <param name="words">The words.</param>
    /// <param name="known">The numbers that can be promised.</param>
    public static TolerancePromise? Read(AskedReader reader, Choice choice, string words, IReadOnlyList<Measure> known)
    {
        if (Shape().Match(words) is not { Success: true } match)
        {
            reader.Object(choice.Name, $"'{words}' is no promise: write it as \"ratio at least 1.05\" or \"settling-rms-pitch at most 0.4 °\".");
            return null;
        }

        var key = match.Groups["key"].Value;
        if (known.FirstOrDefault(m => m.Key == key) is not { } measure)
        {
            var near = NearestWord.Of(key, known.Select(m => m.Key));
            reader.Object(choice.Name, $"'{key}' is no number that can be promised here. {(near is null ? "" : $"Did you mean {near}? ")}"
                + "The keys are those of JSON and of the glossary; those of a pass need a road.");
            return null;
        }

        var value = match.Groups["value"].Value.Trim();
        if (Number(value, measure.Unit) is not { } shown)
        {
            var unit = measure.Unit.Symbol == "–" ? "a number without a unit" : $"a number in {measure.Unit.Symbol}";
            reader.Object(choice.Name, $"'{value}' is not how {measure.Name} is given: write {unit}.");
            return null;
        }

        return new TolerancePromise { Measure = measure, IsLeast = match.Groups["way"].Value == "least", Limit = measure.Unit.ToSi(shown) };
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

        return null;
    }

    [GeneratedRegex(@"^\s*(?<key>[a-z0-9-]+)\s+at\s+(?<way>least|most)\s+(?<value>.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
