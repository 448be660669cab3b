using Heaveline.Answers;
using Heaveline.Causes;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>What to buy: the finding, price against settling, the shortlist, what else changes, the shopping list, what fitting asks for.</summary>
internal static class ChoosePart
{
    // The finding stands above it already.
    private const string Caption = "Every setup that may be chosen, the shortlist by its letters.";

    public static ReportPart Of(ReportWork work)
    {
        var (answer, asked) = (work.Choice, work.Choices.Study!);
        var list = answer.Findings.List;
        return new ReportPart
        {
            Heading = $"What to buy: {asked.Car.Name}",
            Blocks =
            [
                Paragraph.Of(answer.Finding.Text),
                Paragraph.Of(answer.Head[0].Text),
                .. answer.FigureIds.Select(id => Illustration.Of(answer.Figure(id) with { Caption = Caption })),
                .. list.IsEmpty ? Array.Empty<Block>() : (Block[])
                [
                    Points.Of(answer.Shortlist.Select(s => s.Text)),
                    .. answer.ShortTables.Select(table => Tabulated.Of(table)),
                    .. answer.PriceTables.Select((table, k) => k > 0 ? Tabulated.Of(table) : Tabulated.Of(table) with
                    {
                        Caption = $"{table.Title}, standing under '{NeutralLoad.Heaviest(asked.Loads).Name}'",
                    }),
                    .. list.SelectMany((told, k) => Shopping(told, asked, k == 0)),
                ],
                .. Some(answer.Words.Checks.Select(s => s.Text), "To check on the real car:"),
                .. Some(answer.Words.Reasons.Select(s => s.Text), "Why it is so:"),
                .. Some(answer.Words.Method.Select(s => s.Text), "How it was found:"),
                .. answer.Closing.Select(Caution.Of),
            ],
            Sources = [.. answer.Sources],
        };
    }

    private static IEnumerable<Block> Shopping(ChooseTold told, ChooseAsked asked, bool isFirst)
    {
        yield return Paragraph.Of(isFirst ? $"To buy for {told.Letter}:" : $"Or for {told.Letter}:");
        yield return Points.Of(ChooseShopping.Of(told, asked).Select(s => s.Text).Concat(ChooseShopping.Needs(told)));
    }

    private static IEnumerable<Block> Some(IEnumerable<string> texts, string heading)
    {
        string[] all = [.. texts];
        return all.Length == 0 ? [] : [Paragraph.Of(heading), Points.Of(all)];
    }
}
