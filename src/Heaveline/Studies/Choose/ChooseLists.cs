using System.Collections.Immutable;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Several lists of parts beside each other: in one currency, every part told from every other.</summary>
internal static class ChooseLists
{
    /// <summary>Why lists cannot stand beside each other; null where they can.</summary>
    /// <param name="lists">The lists.</param>
    public static RefusedValueException? Against(IReadOnlyList<PartsList> lists)
    {
        // Amounts of two currencies have no sum.
        string[] currencies =
        [
            .. lists.SelectMany(list => list.Parts).Select(part => part.Price?.Currency ?? "").Where(currency => currency.Length > 0)
                .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
        ];
        if (currencies.Length > 1)
        {
            return new RefusedValueException(
                "currency", string.Join(" and ", currencies), "one", "Write both lists in one currency, at the rate of the day.");
        }

        var twice = lists.SelectMany(list => list.Parts.Select(part => (List: list.Name, part.Name))).GroupBy(one => one)
            .FirstOrDefault(same => same.Count() > 1);
        return twice is null
            ? null
            : new RefusedValueException(
                $"part '{twice.Key.Name}'", $"in two lists named '{twice.Key.List}'", "in lists of different names",
                "Give each list once, and name the other otherwise: nobody could tell which of both parts is meant.");
    }

    /// <summary>The lists, with the name of its list behind every part of which another list has one of the same name.</summary>
    /// <param name="lists">The lists.</param>
    public static ImmutableArray<PartsList> Apart(IReadOnlyList<PartsList> lists)
    {
        HashSet<string> shared =
        [
            .. lists.SelectMany(list => list.Parts).GroupBy(part => part.Name, StringComparer.Ordinal).Where(same => same.Count() > 1)
                .Select(same => same.Key),
        ];
        return
        [
            .. lists.Select(list => list with
            {
                Parts = [.. list.Parts.Select(part => shared.Contains(part.Name) ? part with { Name = $"{part.Name} of '{list.Name}'" } : part)],
            }),
        ];
    }
}
