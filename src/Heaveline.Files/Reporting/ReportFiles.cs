using Heaveline.Reports;
using Heaveline.Studies;

namespace Heaveline.Files.Reporting;

/// <summary>
/// The files that a report was computed from, each named from the deepest folder that holds them all: what a report prints must neither depend on
/// where they lay nor give away where that was.
/// </summary>
public static class ReportFiles
{
    /// <summary>The same report with its inputs, and the words of its command, under those names.</summary>
    /// <param name="asked">What was asked of the report, its inputs named by their paths.</param>
    public static ReportAsked Named(ReportAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        string[] own =
        [
            .. asked.Inputs.Where(i => !i.BuiltIn).Select(i => i.Name),
            .. asked.Drives.SelectMany(d => new[] { d.Path, d.Before?.Path }).OfType<string>(),
        ];
        if (own.Length == 0)
        {
            return asked;
        }

        var files = new SharedFolder(own);
        string NameOf(string path) => own.Contains(path) ? files.NameOf(path) : path;
        RecordedDrive Named(RecordedDrive drive) =>
            drive with { Path = NameOf(drive.Path), Before = drive.Before is { } before ? Named(before) : null };
        return asked with
        {
            Drives = [.. asked.Drives.Select(Named)],
            // Two ways of writing one path are one file.
            Inputs = [.. asked.Inputs.Select(i => i.BuiltIn ? i : i with { Name = NameOf(i.Name) }).DistinctBy(i => i.Name)],
            Words = asked.Words.With(ReportStudy.Cars, NameOf).With(Choices.Road, NameOf).With(ReportStudy.Drives, NameOf)
                .With(ReportStudy.Study, NameOf).With(ReportStudy.Films, NameOf).With(ReportStudy.FilmsAfter, NameOf)
                .With(ReportStudy.Out, name => Path.GetFileName(name)),
        };
    }
}
