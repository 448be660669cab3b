using System.Collections.Immutable;

namespace Heaveline.Parts;

/// <summary>Several lists of parts beside each other: every part told from every other by its name.</summary>
public static class PartsLists
{
    /// <summary>A part of which nobody could tell which of both is meant: of one name in two lists of one name; null where there is none.</summary>
    /// <param name="lists">The lists.</param>
    public static (string List, string Part)? Twice(IReadOnlyList<PartsList> lists) =>
        lists.SelectMany(list => list.Parts.Select(part => (List: list.Name, Part: part.Name))).GroupBy(one => one)
            .Where(same => same.Count() > 1).Select(same => ((string, string)?)same.Key).FirstOrDefault();

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
