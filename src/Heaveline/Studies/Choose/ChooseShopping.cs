using Heaveline.Answers;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What is bought for a setup: how many of which part, at what price, where, and how soon; and what it asks for when it is fitted.</summary>
internal static class ChooseShopping
{
    /// <summary>The list of a setup, a sentence a place, its sum last.</summary>
    /// <param name="told">The setup.</param>
    /// <param name="asked">What was asked: its lists say where a part is.</param>
    public static IReadOnlyList<Sentence> Of(ChooseTold told, ChooseAsked asked)
    {
        var letter = told.Letter.ToLowerInvariant();
        var parts = told.Fitted.Parts.Where(part => !part.IsThere).ToArray();
        List<Sentence> lines =
            [.. parts.Select(part => new Sentence($"buy-{letter}-{part.Place.Name().Replace(' ', '-')}", Line(part, told.Fitted, asked)))];
        if (told.Fitted.Cost is { IsNone: false } sum && parts.Length > 1)
        {
            lines.Add(new($"buy-{letter}-sum", $"Together {sum}, {Counted(parts, told.Fitted)}."));
        }

        return lines;
    }

    /// <summary>What the setup's springs ask of their seats, and what else must be said of its parts.</summary>
    /// <param name="told">The setup.</param>
    public static IReadOnlyList<string> Needs(ChooseTold told) =>
        [.. told.Fitted.Packers.Select(packer => packer.Words).Concat(told.Fitted.Remarks.Select(remark => remark.Text)).Distinct()];

    // What of the fitting is in a sum: work that two places share is counted at both.
    private static string Counted(FittedPart[] parts, Fitted fitted)
    {
        var priced = parts.Where(part => part.Option.Part.FittingPrice is not null).ToArray();
        var sum = priced.Aggregate(Money.None, (all, part) => all + part.Option.Part.FittingPrice!.Value);
        string[] without = [.. parts.Except(priced).Select(part => part.Place.Name())];
        var shared = priced.GroupBy(part => part.Place.End()).Any(same => same.Key is not null && same.Count() > 1)
            ? ", each place by itself: work that two places of one axle share is counted twice"
            : "";
        return priced.Length == 0 ? "fitting not counted: no list says what that costs"
            : $"{sum} of it for fitting{shared}"
                + (without.Length == 0 ? "" : $"; that of {SpeedRanges.And(without)} is not counted, no list says what it costs");
    }

    private static string Fitting(Part part) => (part.Labour, part.FittingPrice) switch
    {
        (null, _) => "",
        ({ Si: 0.0 }, _) => ", no time for fitting",
        ({ } time, null) => $", {Numeral.Of(In.Hours.Of(time.Si), "0.##")} h to fit, at a price that the list does not say",
        ({ } time, { } money) => $", {Numeral.Of(In.Hours.Of(time.Si), "0.##")} h to fit, {money}",
    };

    private static string Line(FittedPart part, Fitted fitted, ChooseAsked asked)
    {
        var (name, pieces) = (part.Option.Part.Name, part.Option.Part.PiecesOn(fitted.Car.Kind));
        var set = part.Option.Name == name ? "" : $" ({part.Option.Name[name.Length..].Trim()})";
        if (asked.RangeAt(part.Place) is not null)
        {
            return FormattableString.Invariant($"{pieces} for the {part.Place.Name()}: {part.Option.Name}, of a free range: to be found or made, ")
                + "at a price that nobody said.";
        }

        var list = PartsLists.Apart(asked.Lists).FirstOrDefault(one => one.Parts.Any(other => other.Name == name))?.Name;
        var price = part.Option.Price switch
        {
            null => ", at a price that the list does not say",
            { IsNone: true } => ", which costs nothing: it is there",
            { } one when pieces > 1 => $", {one} each, {pieces * one}",
            { } one => $", {one}",
        };
        return FormattableString.Invariant($"{pieces} × {name}{set} as {part.Place.Name()}{price}{Fitting(part.Option.Part)}")
            + (list is null ? "" : $"; {list}") + (part.Option.Part.Stock is { } stock ? $": {stock}" : "") + ".";
    }
}
