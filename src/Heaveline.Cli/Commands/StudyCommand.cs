using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>A question as a command: its choices are options, its answer is printed, or written as JSON, CSV and a figure.</summary>
internal static class StudyCommand
{
    public static Command Of<TAsked, TAnswer>(Streams streams, Question<TAsked, TAnswer> question)
        where TAsked : class
        where TAnswer : Answer
    {
        var command = new Command(question.Word, question.Says);
        var typed = ChoiceInputs.Add(command, question.Choices.Append(question.Draws).Append(Choices.Units).OfType<Choice>());
        var json = Options.Json();
        var all = question.IsShortened ? Options.All() : null;
        var csv = question.CsvSays is null
            ? null
            : new Option<string?>($"--{question.CsvOption}") { Description = question.CsvSays, HelpName = "FILE" };
        var figure = question.HasFigure ? Options.Figure() : null;
        foreach (var option in new Option?[] { all, json, csv, figure }.OfType<Option>())
        {
            command.Add(option);
        }

        command.SetAction((result, stop) => Task.FromResult(Run(
            streams,
            question,
            GivenUnits.Of(typed(result)),
            new Outputs(
                all is not null && result.GetValue(all),
                result.GetValue(json),
                csv is null ? null : result.GetValue(csv),
                figure is null ? null : result.GetValue(figure)),
            stop)));
        return command;
    }

    private static int Run<TAsked, TAnswer>(Streams streams, Question<TAsked, TAnswer> question, Given given, Outputs outputs, CancellationToken stop)
        where TAsked : class
        where TAnswer : Answer
    {
        var (asked, picture, units) = Read(streams, question, given, outputs);
        TAnswer answer;
        using (var progress = new Progress(streams, $"{question.Word}, per cent", 100))
        {
            answer = question.Answers(asked, new StudyRun { Progress = progress, Cancellation = stop, Degree = Environment.ProcessorCount });
        }

        if (outputs.Json)
        {
            streams.Results.WriteLine(answer.Json(Release.Version, question.Group ?? question.Word));
        }
        else
        {
            foreach (var line in outputs.All ? answer.WholeLinesIn(units) : answer.LinesIn(units))
            {
                streams.Results.WriteLine(line);
            }
        }

        if (outputs.Csv is { } csv)
        {
            WholeFile.Write(csv, answer.Csv());
        }

        if (outputs.Figure is { } figure)
        {
            Pictures.Write(streams, answer.Figure(picture ?? answer.FigureIds[0]).In(units), figure);
        }

        return answer.Failure is { } failure ? throw new Stopped($"heaveline: {failure}", ExitCode.NotComputed) : ExitCode.Done;
    }

    // All that is wrong is said at once.
    private static (TAsked Asked, string? Picture, ReaderUnits Units) Read<TAsked, TAnswer>(
        Streams streams, Question<TAsked, TAnswer> question, Given given, Outputs outputs)
        where TAsked : class
        where TAnswer : Answer
    {
        var finder = new FileFinder(streams);
        var doors = new AskedReader(given, finder);
        var picture = question.Draws is { } draws ? doors.Word(draws) : null;
        var units = doors.Word(Choices.Units);
        if (outputs.Figure is { } file && Path.GetExtension(file).ToLowerInvariant() is not (".svg" or ".png" or ".pdf"))
        {
            doors.Object("figure", $"--figure '{file}': the name must end in .svg, .png or .pdf.");
        }

        // Before anything is read or computed: a file that is written over is lost.
        if (outputs.Csv is { } csv && !csv.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
        {
            doors.Object(question.CsvOption, $"--{question.CsvOption} '{csv}': the name must end in .csv.");
        }

        foreach (var choice in outputs.Csv is null ? question.OfCsv.Where(choice => given.Of(choice) is not null) : [])
        {
            doors.Object(choice.Name, $"--{choice.Name} speaks of the file of --{question.CsvOption}: give that too, or leave it out.");
        }

        var reading = question.Read(given, finder);
        List<Objection> objections = [.. doors.Objections, .. reading.Objections];
        if (outputs.Csv is { } target && objections.Count == 0 && finder.HasRead(target))
        {
            objections.Add(new Objection(
                question.CsvOption,
                $"--{question.CsvOption} '{target}': this file is read for the answer and is not written over. Give another name.",
                IsUsage: true));
        }

        if (outputs.Csv is not null && reading.Asked is { } read && question.CsvRefusal(read) is { } refusal)
        {
            objections.Add(new Objection(question.CsvOption, refusal, IsUsage: true));
        }

        ChoiceInputs.Stop(objections);
        return (reading.Asked!, picture, ReaderUnits.Of(units).Leaving(finder.Names));
    }

    private sealed record Outputs(bool All, bool Json, string? Csv, string? Figure);
}
