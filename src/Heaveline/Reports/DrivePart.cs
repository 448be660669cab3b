using Heaveline.Answers;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Each drive: what its log is good for, what is read off it, where that must be doubted.</summary>
internal static class DrivePart
{
    public static IEnumerable<ReportPart> Of(ReportWork work) =>
        work.Choices.Drives.Select(drive => Of(drive, work.Of(drive), work.NamesOf(drive), work.Choices.Cars));

    private static ReportPart Of(RecordedDrive drive, DriveAnswer answer, SiteNames? names, IReadOnlyList<LoadedCar> cars) => new()
    {
        Heading = $"The drive: {drive.Name}",
        Blocks =
        [
            .. DriveCautions.OfStrangers(cars, drive, drive.Before).Select(Caution.Of),
            Paragraph.Of(Driven(drive)),
            .. drive.Note.Length > 0 ? [Paragraph.Of(drive.Note.Trim())] : Array.Empty<Block>(),
            Points.Of(answer.Head.Select(s => s.Text)),
            .. Called(answer, names).Cautions.Select(Caution.Of),
            .. answer.Events is { } events && names?.Caution(events) is { } caution ? new Block[] { Caution.Of(caution) } : [],
            Illustration.Of(answer.Figure(DriveAnswer.Strip)),
            .. Car(answer),
            .. Bumps(Called(answer, names)),
            .. answer.Comfort is { } comfort ? new[] { Tabulated.Of(FloorTable.Of(comfort)) } : [],
            Tabulated.Of(DriveTable.Of(answer.Drive, answer.Trust), $"The log of {drive.Name}"),
            .. answer.Reading.Select(s => s.Text).ToArray() is { Length: > 0 } reading
                ? new Block[] { Paragraph.Of("How its files were read:"), Points.Of(reading) } : [],
            .. answer.Closing.Select(Caution.Of),
        ],
        Sources = [.. answer.Sources],
    };

    private static string Driven(RecordedDrive drive) => (drive.Car, drive.IsDescribed) switch
    {
        ({ } car, true) => $"Driven, as written down with it: {car.Car.Name}, load '{car.Load.Name}'.",
        ({ } car, false) => $"What was driven is not written down with this log: taken is {car.Car.Name}, load '{car.Load.Name}', as in this report.",
        _ => "Which car was driven, and how loaded, is not written down.",
    };

    private static IEnumerable<Block> Car(DriveAnswer answer)
    {
        if (answer.FigureIds.Contains(DriveAnswer.CarCard))
        {
            yield return Illustration.Of(answer.Figure(DriveAnswer.CarCard));
        }

        if (answer.Identified is { } car)
        {
            foreach (var table in DriveCarTable.Of(car, answer.Beside))
            {
                yield return Tabulated.Of(table);
            }
        }

        string[] said = [.. answer.CarSentences.Select(s => s.Text)];
        if (said.Length > 0)
        {
            yield return Points.Of(said);
        }
    }

    // The same with its sites called in text, tables and figures alike as beside the other drive.
    private static DriveAnswer Called(DriveAnswer answer, SiteNames? names) =>
        answer.Events is { } events && names is not null
            ? answer with { Events = names.Of(events), Missed = [.. answer.Missed.Select(m => m with { Site = names.Of(m.Site) })] }
            : answer;

    private static IEnumerable<Block> Bumps(DriveAnswer answer)
    {
        if (answer.Events is not { Events.IsEmpty: false } events)
        {
            yield break;
        }

        if (events.Kept.Any())
        {
            yield return Illustration.Of(answer.Figure(DriveAnswer.Overlay));
        }

        foreach (var table in EventTable.Short(events))
        {
            yield return Tabulated.Of(table);
        }

        yield return Points.Of(EventWords.Of(events, answer.Asked.Advice).Select(s => s.Text));
    }
}
