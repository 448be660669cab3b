using Heaveline.Elements;

namespace Heaveline.Passes;

/// <summary>The elements of a car that are curved between their kinks, in words.</summary>
internal static class CurvedElements
{
    /// <summary>Their names, front first; empty for a piecewise straight car.</summary>
    public static IReadOnlyList<string> Of(ElementList elements)
    {
        // What a side has in common belongs to neither end.
        var common = elements.CommonSprings.Concat(elements.CommonDampers).ToHashSet();
        var byCorner = elements.All.Where(element => !common.Contains(element)).GroupBy(element => element.Corner).OrderBy(corner => corner.Key);
        return
        [
            .. byCorner.SelectMany(corner => corner.Select(element => element.CurvedRatio).OfType<string>()
                .Concat(corner.SelectMany(element => element.CurvedLaws))
                .Select(words => $"{(corner.Key < 2 ? "front" : "rear")} {words}")).Distinct(),
            .. common.SelectMany(element => element.CurvedLaws).Distinct(),
        ];
    }
}
