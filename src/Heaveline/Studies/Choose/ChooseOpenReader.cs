using System.Collections.Immutable;
using Heaveline.Parts;

namespace Heaveline.Studies;

/// <summary>The places whose part may change, and what may go there, as people write it: "front spring: at most 120".</summary>
internal static class ChooseOpenReader
{
    private static Choice Open => ChooseChoices.Open;

    private static Choice Keep => ChooseChoices.Keep;

    /// <summary>Reads them; the usual places where none was given.</summary>
    public static (ImmutableArray<PartPlace> Places, ImmutableArray<ChooseFilter> Filters) Read(AskedReader reader)
    {
        var (places, filters) = (new List<PartPlace>(), ImmutableArray.CreateBuilder<ChooseFilter>());
        var words = reader.Texts(Open);
        foreach (var line in words)
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            if (PlaceOf(reader, Open, colon < 0 ? line : line[..colon].Trim()) is not { } place)
            {
                continue;
            }

            if (places.Contains(place))
            {
                reader.Object(Open.Name, $"'{place.Name()}' is opened twice: say in one line what may go there.");
            }

            places.Add(place);
            var (filter, refusal) = colon < 0 ? (new ChooseFilter(place), null) : ChooseFilter.Read(place, line[(colon + 1)..]);
            if (refusal is not null)
            {
                reader.Object(Open.Name, $"'{line}': {refusal.Message} {refusal.Advice}");
            }
            else if (!filter.IsAny)
            {
                filters.Add(filter);
            }
        }

        PartPlace[] kept = [.. reader.Texts(Keep).Select(word => PlaceOf(reader, Keep, word)).OfType<PartPlace>()];
        foreach (var place in kept.Where(places.Contains))
        {
            reader.Object(Keep.Name, $"'{place.Name()}' is to stay as it is, and is open: leave out one of the two.");
        }

        foreach (var place in kept.GroupBy(place => place).Where(same => same.Count() > 1).Select(same => same.Key))
        {
            reader.Object(Keep.Name, $"'{place.Name()}' is kept twice: leave one of them out.");
        }

        PartPlace[] open = [.. words.Count == 0 ? ChooseAsked.Usual.Except(kept) : places];
        if (words.Count == 0 && open.Length == 0)
        {
            reader.Object(Keep.Name, "Every place is to stay as it is: nothing is left to choose.");
        }

        return ([.. open], filters.ToImmutable());
    }

    /// <summary>Objects to names that no part of the lists has.</summary>
    public static void RefuseUnknown(AskedReader reader, IReadOnlyList<ChooseFilter> filters, IReadOnlyList<PartsList> lists)
    {
        foreach (var filter in lists.Count == 0 ? [] : filters)
        {
            Part[] parts = [.. PartsLists.Apart(lists).SelectMany(list => list.For(filter.Place))];
            foreach (var name in filter.Names.Where(name => !parts.Any(part => ChooseFilter.IsCalled(part, name))))
            {
                reader.Object(
                    Open.Name,
                    $"'{name}' is no part of the lists for the {filter.Place.Name()}; there "
                        + (parts.Length == 0 ? "is none." : $"are {string.Join(", ", parts.Select(part => part.Name))}."),
                    isUsage: false);
            }
        }
    }

    private static PartPlace? PlaceOf(AskedReader reader, Choice choice, string word)
    {
        if (PartPlaces.All.Where(place => place.Name() == word).ToArray() is [var place])
        {
            return place;
        }

        reader.Object(choice.Name, $"'{word}' is no place; there are {string.Join(", ", PartPlaces.All.Select(p => p.Name()))}.");
        return null;
    }
}
