using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files.Keeping;
using Heaveline.Files.Reporting;
using Heaveline.Press;
using Heaveline.Press.Paper;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>A report of chosen parts as one file to publish or to print.</summary>
internal static class ReportCommand
{
    public static Command Of(Streams streams)
    {
        var command = new Command(ReportStudy.Question.Word, ReportStudy.Question.Says);
        var typed = ChoiceInputs.Add(command, ReportStudy.Question.Choices);
        var kept = new Option<string?>("--kept-in")
        {
            Description = "Take what 'choose STUDY --kept-in FOLDER' has kept of the study's work, where it is of these very texts and of this "
                + "program; what is missing there is worked out, and kept beside it.",
            HelpName = "FOLDER",
        };
        command.Add(kept);
        command.SetAction((result, stop) => Task.FromResult(Run(streams, GivenUnits.Of(typed(result)), result.GetValue(kept), stop)));
        return command;
    }

    private static int Run(Streams streams, Given given, string? folder, CancellationToken stop)
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
        using (var kept = folder is null ? null : Kept(streams, folder, given.Of(ReportStudy.Study), stop))
        using (var progress = new Progress(streams, "parts", asked.Parts.Length))
        {
            var run = new StudyRun { Progress = progress, Cancellation = stop, Degree = Environment.ProcessorCount };
            report = Report.From(asked, kept is null ? run : run with { Through = kept.Through });
            kept?.Say();
        }

        var isReplaced = file.Write(streams, ReportFile.Of(report, file.Ending, asked.Paper == "letter" ? PaperSize.Letter : PaperSize.A4), stop);
        (file.IsStandard ? streams.Remarks : streams.Results).WriteLine($"{report.Title}: {report.Parts.Length} parts, written to {file.Name}"
            + (isReplaced ? ", replacing the file that was there." : "."));
        return ExitCode.Done;
    }

    // As 'choose' knows the study: by its texts, whatever its files are called. Without what was kept the report comes to the same, later.
    private static KeptRun? Kept(Streams streams, string folder, string? study, CancellationToken stop)
    {
        if (study is null)
        {
            throw new Stopped("heaveline: --kept-in takes what was kept of a study: give --study too, or leave it out.", ExitCode.WrongUsage);
        }

        var finder = new FileFinder(new Streams(TextWriter.Null, TextWriter.Null, interactive: false), stop);
        var given = new Given([(Choices.Car.Name, study)]);
        ChooseStudy.Question.Read(given, finder);
        try
        {
            var texts = StudyTexts.Of(ChooseStudy.Question.Word, given, finder.Files);
            if (File.Exists(PieceFile.In(folder, texts.Hash)))
            {
                var kept = KeptRun.Open(streams, folder, resumes: true, texts);
                streams.Remarks.WriteLine($"heaveline: what to buy is taken from what is kept of this very study, {texts.Hash[..16]}.");
                return kept;
            }

            streams.Remarks.WriteLine(
                $"heaveline: nothing is kept in '{folder}' of the study as it is now, {texts.Hash[..16]}: what to buy is worked out anew.");
        }
        catch (RefusedValueException refused)
        {
            streams.Remarks.WriteLine($"heaveline: what to buy is worked out anew: {refused.Message}");
        }

        return null;
    }
}
