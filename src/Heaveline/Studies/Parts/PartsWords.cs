using Heaveline.Answers;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What of a list fits one place, in words: what fits and what it costs, then what does not and why.</summary>
internal static class PartsWords
{
    public static IEnumerable<Sentence> Of(PlaceFit place)
    {
        var id = place.Place.Name().Replace(' ', '-');
        var fits = place.Options.Where(fit => fit.Misfits.Count == 0).GroupBy(fit => fit.Option.Part).ToList();
        var name = FirstLetter.Raised(place.Place.Name());
        yield return new(id, fits.Count == 0 ? $"{name}: nothing fits." : $"{name}: {string.Join(", ", fits.Select(Named))}.");
        foreach (var remark in fits.SelectMany(part => Remarks([.. part])).Distinct())
        {
            yield return new($"{id}-remark", remark);
        }

        foreach (var misfits in place.Options.Where(fit => fit.Misfits.Count > 0).GroupBy(fit => fit.Option.Part))
        {
            foreach (var misfit in misfits.SelectMany(fit => fit.Misfits).GroupBy(misfit => misfit.Kind).Select(kind => kind.First()))
            {
                yield return new($"{id}-misfit", $"{misfit.Words} {misfit.Advice}");
            }
        }

        if (place.Elsewhere.Count > 0)
        {
            yield return new($"{id}-elsewhere", $"Not sold for that place: {string.Join(", ", place.Elsewhere.Select(part => part.Name))}.");
        }
    }

    // A part of many settings is named once, with those of them that fit.
    private static string Named(IGrouping<Part, OptionFit> fits)
    {
        var options = fits.Select(fit => fit.Option).ToList();
        var part = fits.Key;
        var name = options switch
        {
            [var one] => one.Name,
            [{ Click: { } first }, ..] => InvariantText.Text($"{part.Name} at clicks {first} to {options[^1].Click}"),
            [{ Hole: not null }, ..] => $"{part.Name} at the holes {string.Join(" and ", options.Select(option => option.Hole))}",
            _ => $"{part.Name} ({string.Join(", ", options.Select(o => o.Name == part.Name ? "whole" : o.Name[(part.Name.Length + 1)..]))})",
        };
        return $"{name}{Price(fits.First())}";
    }

    private static string Price(OptionFit fit) => fit.Fitted!.Costs[0] switch
    {
        { Fitting: { IsNone: false } fitting, PriceOfOne: { } one, Pieces: var pieces, Total: var all } =>
            InvariantText.Text($" at {pieces} × {one} and {fitting} for fitting = {all}"),
        { PriceOfOne: { IsNone: true } } => " at no cost",
        { PriceOfOne: null } => " at a price that nobody gave",
        { Pieces: 1, PriceOfOne: { } one } => $" at {one}",
        { Pieces: var pieces, PriceOfOne: { } one, Total: var all } => InvariantText.Text($" at {pieces} × {one} = {all}"),
    };

    // What is said of every setting alike names the first; what is said of some names each.
    private static IEnumerable<string> Remarks(IReadOnlyList<OptionFit> fits) =>
        from fit in fits
        from remark in fit.Fitted!.Remarks
        where ReferenceEquals(fit, fits[0]) || !fits[0].Fitted!.Remarks.Any(said => said.Id == remark.Id)
        select remark.Text.StartsWith(fit.Option.Name, StringComparison.Ordinal) && fits.Count > 1 && fit.Option.Cut is null
            ? fit.Option.Part.Name + remark.Text[fit.Option.Name.Length..]
            : remark.Text;
}
