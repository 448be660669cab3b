using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Levels as they are written: "1 %: 9, 3 %: 4" with their prices, or "1 %, 3 %" without.</summary>
internal static class ToleranceLevelText
{
    private const int Most = 8;

    /// <summary>Reads the levels, tightest first; those that are none are objected to.</summary>
    /// <param name="reader">Told what is wrong.</param>
    /// <param name="choice">The choice.</param>
    /// <param name="most">Largest half-width.</param>
    /// <param name="example">How one may be written ("3 %").</param>
    public static IReadOnlyList<ToleranceLevel> Read<TDimension>(AskedReader reader, Choice choice, double most, string example)
        where TDimension : struct, IDimension
    {
        var all = CommaList.Of(reader.Text(choice) ?? "");
        if (all.Length > Most)
        {
            reader.Object(choice.Name, FormattableString.Invariant($"{choice.Name}: {all.Length} tolerances are too many; give at most {Most}."));
            return [];
        }

        var levels = all.Select(words => Level<TDimension>(reader, choice, words, most, example)).OfType<ToleranceLevel>()
            .OrderBy(level => level.HalfWidth).ToArray();
        if (levels.Select(l => l.HalfWidth).Distinct().Count() < levels.Length)
        {
            reader.Object(choice.Name, $"{choice.Name}: a tolerance stands there twice.");
        }

        if (levels.Select(l => l.Price is null).Distinct().Count() > 1)
        {
            reader.Object(choice.Name, $"{choice.Name}: give every tolerance its price (\"{example}: 4\"), or none.");
        }

        return levels;
    }

    private static ToleranceLevel? Level<TDimension>(AskedReader reader, Choice choice, string words, double most, string example)
        where TDimension : struct, IDimension
    {
        var parts = words.Split(':', 2);
        if (reader.Amount<TDimension>(choice, parts[0].Trim(), example) is not { Si: var width })
        {
            return null;
        }

        if (!(width > 0.0 && width <= most))
        {
            var unit = example.Split(' ')[^1];
            var shown = QuantityText.Format(new Amount<TDimension>(most), unit, 3);
            reader.Object(choice.Name, $"{choice.Name} '{parts[0].Trim()}': a tolerance is above 0 and at most {shown}.");
            return null;
        }

        if (parts.Length == 1)
        {
            return new(width);
        }

        if (QuantityText.Number(parts[1].Trim()) is { } price && price >= 0.0 && double.IsFinite(price))
        {
            return new(width, price);
        }

        reader.Object(choice.Name, $"'{parts[1].Trim()}' is no price: write a number of 0 or more, without the name of the money.");
        return null;
    }
}
