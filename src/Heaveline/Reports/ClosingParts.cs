using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Reports;

/// <summary>What every report ends with.</summary>
internal static class ClosingParts
{
    // A measured road can be long; its digest then stands for it.
    private const int LongestText = 20_000;

    /// <summary>What people who act on the numbers must know.</summary>
    /// <param name="asked">What was asked of the report.</param>
    public static ReportPart Cautions(ReportAsked asked) => new()
    {
        Heading = "Before anybody acts on these numbers",
        Blocks =
        [
            Paragraph.Of(Ground(asked)),
            .. Studies.Cautions.All.Select(Caution.Of),
        ],
    };

    private static string Ground(ReportAsked asked)
    {
        string[] measured =
        [
            .. asked.Read.Any() ? ["What is said of the drives is read off their logs, as far as each bears it"] : Array.Empty<string>(),
            .. asked.Parts.Contains(PartKind.Film)
                ? ["what is said of the films is read off their tracks, with the wheelbase of their sheets as the scale"] : Array.Empty<string>(),
        ];
        return measured.Length == 0
            ? "Everything here is computed from what the car files say. It is no proof that a car is safe or legal."
            : $"{FirstLetter.Raised(string.Join("; ", measured))}; all else is computed from what the car files say. None of it is proof that a car "
                + "is safe or legal.";
    }

    /// <summary>Sources of a report's numbers, in a table.</summary>
    public static ReportPart SourcesOf(Report report)
    {
        var sources = report.Sources;
        return new ReportPart
        {
            Heading = "Sources of the numbers",
            Blocks =
            [
                sources.Count == 0
                    ? Paragraph.Of("No part of this report holds a computed number.")
                    : new Tabulated
                    {
                        Caption = "Methods, where they come from, and how that is known",
                        Table = new TablePanel
                        {
                            Columns = [.. new[] { "key", "source", "what is computed by it", "how it is known" }.Select(
                                h => new TableColumn { Heading = h, Alignment = ColumnAlignment.Left })],
                            Rows = [.. sources.Select(s => TableRow.Of(s.Key, s.Citation, s.For, s.Known))],
                        },
                    },
            ],
        };
    }

    /// <summary>How to make the report again.</summary>
    /// <param name="asked">What was asked of the report.</param>
    /// <param name="logs">Files of drives that were read.</param>
    public static ReportPart Again(ReportAsked asked, IReadOnlyList<InputDigest> logs) => new()
    {
        Heading = "To make this report again",
        Blocks =
        [
            Paragraph.Of($"Made with {asked.Program}. Save the texts below under their names, byte for byte"
                + (logs.Count > 0 ? ", put the logs beside them under theirs, and type:" : ", and type:")),
            new Typed { Line = asked.Command },
            Paragraph.Of(logs.Count > 0 ? "The same program, texts and logs give the same report, to the last byte."
                : "The same program and the same texts give the same report, to the last byte."),
            .. asked.Inputs.Length + logs.Count > 0 ? [Digests(asked, logs)] : Array.Empty<Block>(),
            .. asked.Inputs.Where(i => i.Text.Length <= LongestText).Select(i => new Verbatim { Input = i }),
        ],
    };

    private static Tabulated Digests(ReportAsked asked, IReadOnlyList<InputDigest> logs) => new()
    {
        Caption = "What it was computed from",
        Table = new TablePanel
        {
            Columns = [.. new[] { "name", "kind", "SHA-256" }.Select(h => new TableColumn { Heading = h, Alignment = ColumnAlignment.Left })],
            Rows =
            [
                .. asked.Inputs.Select(i => TableRow.Of(
                    i.Name,
                    i.BuiltIn ? "comes with the program" : i.Text.Length > LongestText ? "a file, too long to print here" : "a file, printed below",
                    i.Sha256)),
                .. logs.Select(log => TableRow.Of(log.Name, "a log, not printed here", log.Sha256)),
            ],
        },
    };
}
