using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files.Reporting;
using Heaveline.Press;
using Heaveline.Press.Paper;

namespace Heaveline.Cli.Commands;

/// <summary>A report of chosen parts as one file to publish or to print.</summary>
internal static class ReportCommand
{
    public static Command Of(Streams streams)
    {
        var command = new Command(ReportStudy.Question.Word, ReportStudy.Question.Says);
        var typed = ChoiceInputs.Add(command, ReportStudy.Question.Choices);
        command.SetAction((result, stop) => Task.FromResult(Run(streams, GivenUnits.Of(typed(result)), stop)));
        return command;
    }

    private static int Run(Streams streams, Given given, CancellationToken stop)
    {
        var file = OutputFile.Of(ReportStudy.Out.Name, given.Of(ReportStudy.Out) ?? "", ".html", ".pdf");
        var finder = new FileFinder(streams, stop);
        var reading = ReportStudy.Question.Read(file.IsThrough ? given.With(ReportStudy.Out, ReportStudy.StandardOutput) : given, finder);
        ChoiceInputs.Stop(reading.Objections.Count > 0 ? reading.Objections
            : finder.HasRead(file.Name) ? [file.IsRead]
            : file.NoPlace is { } why ? [why]
            : []);
        var asked = ReportFiles.Named(reading.Asked! with { Program = $"Heaveline {Release.Version}" });
        Report report;
        using (var progress = new Progress(streams, "parts", asked.Parts.Length))
        {
            report = Report.From(asked, new StudyRun { Progress = progress, Cancellation = stop, Degree = Environment.ProcessorCount });
        }

        var isReplaced = file.Write(streams, ReportFile.Of(report, file.Ending, asked.Paper == "letter" ? PaperSize.Letter : PaperSize.A4), stop);
        (file.IsStandard ? streams.Remarks : streams.Results).WriteLine($"{report.Title}: {report.Parts.Length} parts, written to {file.Name}"
            + (isReplaced ? ", replacing the file that was there." : "."));
        return ExitCode.Done;
    }
}
