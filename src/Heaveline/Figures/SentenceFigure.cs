namespace Heaveline.Figures;

/// <summary>What there is to say where there is nothing to draw.</summary>
internal static class SentenceFigure
{
    /// <summary>The sentences as a figure, page wide.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="sentences">One or more.</param>
    public static Figure Of(string title, IReadOnlyList<string> sentences) => new()
    {
        Title = title,
        AltText = string.Join(" ", sentences),
        Size = FigureSize.Page,
        Panels =
        [
            new TablePanel
            {
                Columns = [new TableColumn { Heading = "", Alignment = ColumnAlignment.Left }],
                Rows = [.. sentences.SelectMany(PlanCardFigure.Broken).Select(line => TableRow.Of(line))],
            },
        ],
    };
}
