using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Several lists of parts that are chosen among together.</summary>
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

        return PartsLists.Twice(lists) is not { } twice
            ? null
            : new RefusedValueException(
                $"part '{twice.Part}'", $"in two lists named '{twice.List}'", "in lists of different names",
                "Give each list once, and name the other otherwise: nobody could tell which of both parts is meant.");
    }
}
