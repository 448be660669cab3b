using Heaveline.Answers;
using Heaveline.Parts;

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
            lines.Add(new($"buy-{letter}-sum", $"Together {sum}, fitting not counted: no list says what that takes."));
        }

        return lines;
    }

    /// <summary>What the setup's springs ask of their seats, and what else must be said of its parts.</summary>
    /// <param name="told">The setup.</param>
    public static IReadOnlyList<string> Needs(ChooseTold told) =>
        [.. told.Fitted.Packers.Select(packer => packer.Words).Concat(told.Fitted.Remarks.Select(remark => remark.Text)).Distinct()];

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
        return FormattableString.Invariant($"{pieces} × {name}{set} as {part.Place.Name()}{price}")
            + (list is null ? "" : $"; {list}") + (part.Option.Part.Stock is { } stock ? $": {stock}" : "") + ".";
    }
}
