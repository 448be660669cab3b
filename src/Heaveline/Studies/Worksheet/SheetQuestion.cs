using Heaveline.Quantities;
using Heaveline.Worksheets;

namespace Heaveline.Studies;

/// <summary>What the questions of worksheets have in common.</summary>
internal static class SheetQuestion
{
    public static Question<TAsked, SheetAnswer> Of<TAsked>(
        string word, string says, IReadOnlyList<Choice> choices, Func<SheetReader, TAsked?> reads, Func<TAsked, SheetAnswer> works)
        where TAsked : SheetAsked => new()
        {
            Group = "worksheet",
            Word = word,
            Says = says,
            Choices = choices,
            HasFigure = false,
            Reads = reader =>
            {
                var sheet = new SheetReader(reader);
                return Restating(sheet.Typed, () => reads(sheet));
            },
            Answers = (asked, _) => Told(Restating(asked.Typed, () => works(asked)), asked.Typed),
        };

    public static Choice Choice(string name, string says, string helpName) =>
        new() { Name = name, Kind = ChoiceKind.Quantity, Says = says, HelpName = helpName };

    /// <summary>A number of things in words.</summary>
    public static string Count(int count, string one, string many) =>
        Quantities.InvariantText.Count(count, one, many);

    public static Choice Needed(string name, string says, string helpName) => Choice(name, says, helpName) with { IsNeeded = true };

    public static Choice Repeated(string name, string says, string helpName) => Choice(name, says, helpName) with { IsRepeated = true };

    public static Choice Tick(string name, string says) => new() { Name = name, Kind = ChoiceKind.Tick, Says = says };

    private static SheetAnswer Told(SheetAnswer answer, TypedAmounts typed) => typed.Odd.Count == 0
        ? answer
        : answer with { Notes = [.. answer.Notes, new SheetNote("odd-readings", string.Join(' ', typed.Odd.Distinct()))] };

    // A refusal speaks of what was typed.
    private static T Restating<T>(TypedAmounts typed, Func<T> of)
    {
        try
        {
            return of();
        }
        catch (RefusedValueException refused)
        {
            throw typed.Restate(refused);
        }
    }
}
