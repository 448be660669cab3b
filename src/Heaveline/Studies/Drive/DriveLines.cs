using Heaveline.Answers;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// What a drive says as lines for a terminal: the verdicts, the car, the bumps, the comfort, the log, what must be doubted. On one screen,
/// unless all is asked for.
/// </summary>
internal static class DriveLines
{
    /// <summary>On one screen: what matters most.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="units">The reader's units.</param>
    public static IEnumerable<string> Short(DriveAnswer answer, ReaderUnits units) =>
    [
        .. Head(answer, units),
        .. answer.Identified is { } car ? Tables(units, DriveCarTable.Short(car, answer.Beside)) : [],
        .. Said(units, DriveCarWords.Short(answer).Concat(answer.Recovered)),
        .. answer.Asked.WantsRoughness ? Along(answer, units) : [],
        .. answer.Events is { } events ? BumpLines.Of(events, units) : [],
        .. answer.Comfort is { } comfort ? Tables(units, FloorTable.Fewest(comfort)) : [],
        .. Tables(units, DriveTable.Short(answer.Drive, answer.Trust)),
        "",
        .. answer.Cautions.Select(units.Text),
        "What matters most; all numbers, each bump and how the files were read with --all.",
        .. answer.Closing.Select(units.Text),
    ];

    /// <summary>All of it.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="units">The reader's units.</param>
    public static IEnumerable<string> Whole(DriveAnswer answer, ReaderUnits units) =>
    [
        .. Head(answer, units),
        .. answer.Identified is { } car ? Tables(units, [.. DriveCarTable.Of(car, answer.Beside)]) : [],
        .. Said(units, answer.CarSentences.Concat(answer.Recovered)),
        .. answer.Detail is { } detail ? Detail(answer, detail, units) : [],
        .. answer.Events is { } events
            ? Tables(units, [.. EventTable.Of(events)]).Concat(Said(units, EventWords.Of(events, answer.Asked.Advice))) : [],
        .. answer.Comfort is { } comfort ? Tables(units, FloorTable.Of(comfort)) : [],
        .. Tables(units, DriveTable.Of(answer.Drive, answer.Trust)),
        "",
        .. answer.Cautions.Select(units.Text),
        .. answer.Reading.Select(s => units.Text(s.Text)),
        .. answer.Closing.Select(units.Text),
    ];

    // The halves apart, the speeds that suit, the roughness along the drive, of which more was said before where it was asked for.
    private static IEnumerable<string> Detail(DriveAnswer answer, DriveDetail detail, ReaderUnits units)
    {
        var (halves, speeds, along) = (
            detail.Of(DriveDetailKind.Halves), detail.Of(DriveDetailKind.Speeds), detail.Of(DriveDetailKind.Roughness));
        return
        [
            .. Tables(units, halves.Table), .. Said(units, halves.Sentences),
            .. Tables(units, speeds.Table), .. Said(units, speeds.Sentences),
            .. Tables(units, along.Table), .. answer.Asked.WantsRoughness ? [] : Said(units, along.Sentences),
        ];
    }

    private static IEnumerable<string> Along(DriveAnswer answer, ReaderUnits units) =>
        answer.Detail is { } detail ? Tables(units, detail.Of(DriveDetailKind.Roughness).Table) : [];

    private static IEnumerable<string> Head(DriveAnswer answer, ReaderUnits units) => answer.Head.Select(s => units.Text(s.Text));

    private static IEnumerable<string> Said(ReaderUnits units, IEnumerable<Sentence> sentences) =>
        sentences.Any() ? sentences.Select(s => units.Text(s.Text)).Prepend("") : [];

    private static IEnumerable<string> Tables(ReaderUnits units, params FactTable[] tables) =>
        tables.Where(t => t.Rows.Count > 0).SelectMany(t => new[] { "", FactText.Of(t.In(units)).TrimEnd('\r', '\n') });
}
