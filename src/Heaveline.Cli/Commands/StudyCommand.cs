using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files.Keeping;
using Heaveline.Press;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>A question as a command: its choices are options, its answer is printed, or written as JSON, CSV and a figure.</summary>
internal static class StudyCommand
{
    public static Command Of<TAsked, TAnswer>(
        Streams streams, Question<TAsked, TAnswer> question, bool runsMany = false, IReadOnlyList<FurtherFile<TAnswer>>? further = null)
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
        var on = runsMany ? ComputedOn.Option() : null;
        var elsewhere = question.Pieces is null ? null : new PieceWays();
        (FileChoice Choice, Option<string?> Option)[] files =
            [.. question.Writes.Select(w => (w, new Option<string?>($"--{w.Name}") { Description = w.Says, HelpName = "FILE" }))];
        further ??= [];
        foreach (var option in new Option?[] { all, json, csv, figure, figure is null ? null : Root.Column, on }.OfType<Option>()
            .Concat(files.Select(f => f.Option)).Concat(further.Select(file => file.Option)).Concat(elsewhere?.All ?? []))
        {
            command.Add(option);
        }

        command.SetAction((result, stop) =>
        {
            var ways = elsewhere?.Of(result);
            ways?.Leave(streams);
            if (on is not null)
            {
                ComputedOn.Choose(streams, ways is null ? result.GetValue(on) : ways.On(result.GetValue(on)));
            }

            foreach (var file in further.Where(file => result.GetValue(file.Option) is not null))
            {
                file.Leaves(streams);
            }

            return Task.FromResult(Run(
                streams,
                question,
                GivenUnits.Of(typed(result)),
                new Outputs<TAnswer>(
                    all is not null && result.GetValue(all),
                    result.GetValue(json),
                    OutputFile.Of(csv, csv is null ? null : result.GetValue(csv), question.CsvEnding),
                    OutputFile.Of(figure, figure is null ? null : result.GetValue(figure), ".svg", ".png", ".pdf"),
                    [.. files.Select(f => (f.Choice, File: OutputFile.Of(f.Option, result.GetValue(f.Option), f.Choice.Ending)))
                        .Where(f => f.File is not null).Select(f => (f.Choice, f.File!))],
                    [.. further.Select(f => (f, File: OutputFile.Of(f.Option, result.GetValue(f.Option), f.Ending)))
                        .Where(f => f.File is not null).Select(f => (f.f, f.File!))]),
                ways,
                stop));
        });
        return command;
    }

    private static int Run<TAsked, TAnswer>(
        Streams streams,
        Question<TAsked, TAnswer> question,
        Given given,
        Outputs<TAnswer> outputs,
        PieceWays.Given? ways,
        CancellationToken stop)
        where TAsked : class
        where TAnswer : Answer
    {
        var (asked, picture, units, finder) = Read(streams, question, given, outputs, stop);
        TAnswer answer;
        using (var pieces = ways?.Open(streams, StudyTexts.Of(question.Word, given, finder.Files), stop))
        using (var progress = new Progress(streams, $"{question.Word}, per cent", 100))
        {
            var run = new StudyRun
            {
                Progress = progress, Cancellation = stop, Degree = Environment.ProcessorCount, IsWhole = outputs.All || outputs.Json,
            };
            answer = question.Answers(asked, pieces is null ? run : run with { Through = pieces.Through, PiecesAtOnce = pieces.PiecesAtOnce });
            pieces?.Say();
        }

        // A file that goes to standard output is alone there.
        var words = outputs.Files.Any(file => file.IsStandard) ? streams.Remarks : streams.Results;
        if (outputs.Json)
        {
            streams.Results.WriteLine(answer.Json(Release.Version, question.Group ?? question.Word));
        }
        else
        {
            foreach (var line in outputs.All ? answer.WholeLinesIn(units) : answer.LinesIn(units))
            {
                words.WriteLine(line);
            }
        }

        if (outputs.Csv is { } csv)
        {
            csv.WriteAndSay(streams, answer.Csv(), stop);
        }

        if (outputs.Figure is { } figure)
        {
            var drawn = answer.Figure(picture ?? answer.FigureIds[0]).In(units);
            var name = figure.IsThrough ? figure.Ending : figure.Name;
            figure.WriteAndSay(streams, FigureFile.Of(streams.Column ? drawn.InColumn() : drawn, name), stop);
        }

        foreach (var (made, file) in outputs.Further)
        {
            file.WriteAndSay(streams, made.Of(given, answer, units, stop), stop);
        }

        foreach (var (choice, file) in outputs.Others)
        {
            foreach (var (beside, bytes) in file.WithThoseBeside(Written(answer, choice, file)))
            {
                beside.WriteAndSay(streams, bytes, stop, isAlwaysSaid: true);
            }
        }

        return answer.Failure is { } failure ? throw new Stopped($"heaveline: {failure}", ExitCode.NotComputed) : ExitCode.Done;
    }

    // All that is wrong is said at once.
    private static (TAsked Asked, string? Picture, ReaderUnits Units, FileFinder Finder) Read<TAsked, TAnswer>(
        Streams streams, Question<TAsked, TAnswer> question, Given given, Outputs<TAnswer> outputs, CancellationToken stop)
        where TAsked : class
        where TAnswer : Answer
    {
        var finder = new FileFinder(streams, stop);
        var doors = new AskedReader(given, finder);
        var picture = question.Draws is { } draws ? doors.Word(draws) : null;
        var units = doors.Word(Choices.Units);
        // Before anything is read or computed: a file that is written over is lost.
        foreach (var file in outputs.Files)
        {
            if (file.Problem is { } problem)
            {
                doors.Object(file.Option, problem);
            }
        }

        OutputFile[] written = [.. outputs.Written];
        foreach (var (k, file) in written.Index())
        {
            if (written.Skip(k + 1).Select(file.IsOf).FirstOrDefault(same => same is not null) is { } same)
            {
                doors.Object(same.Choice, same.Sentence);
            }
        }

        if (question.Draws is { } word && given.Of(word) is { } wanted && wanted != word.Usual && outputs.Figure is null)
        {
            doors.Object(word.Name, $"--{word.Name} speaks of the file of --figure: give that too, or leave it out.");
        }

        if (outputs.Files.Count(file => file.IsStandard) + (outputs.Json ? 1 : 0) > 1
            && outputs.Files.FirstOrDefault(file => file.IsStandard) is { } one)
        {
            doors.Object(one.Option, $"--{one.Option} {one.Name}: standard output takes one thing, not two. Name a file for the other.");
        }

        if (streams.Column && outputs.Figure is null)
        {
            doors.Object("column", "--column speaks of the file of --figure: give that too, or leave it out.");
        }

        foreach (var (choice, file) in outputs.Others.Where(other => given.Of(other.Choice.Needs) is null))
        {
            doors.Object(file.Option, $"--{choice.Name} writes what --{choice.Needs.Name} asks for: give that too, or leave it out.");
        }

        foreach (var (choice, file) in outputs.Others)
        {
            if (choice.LiesBeside is { } of && given.Of(of) is { } main && file.Astray(main) is { } astray)
            {
                doors.Object(file.Option, astray);
            }
        }

        foreach (var choice in outputs.Csv is null ? question.OfCsv.Where(choice => given.Of(choice) is not null) : [])
        {
            doors.Object(choice.Name, $"--{choice.Name} speaks of the file of --{question.CsvOption}: give that too, or leave it out.");
        }

        var reading = question.Read(given, finder);
        List<Objection> objections = [.. doors.Objections, .. reading.Objections];
        objections.AddRange(written.Where(file => objections.Count == 0 && finder.HasRead(file.Name)).Select(file => file.IsRead).ToList());
        objections.AddRange(objections.Count > 0 ? [] : written.Select(file => file.NoPlace).OfType<Objection>().ToList());
        if (outputs.Csv is not null && reading.Asked is { } read && question.CsvRefusal(read) is { } refusal)
        {
            objections.Add(new Objection(question.CsvOption, refusal, IsUsage: true));
        }

        ChoiceInputs.Stop(objections);
        return (reading.Asked!, picture, ReaderUnits.Of(units).Leaving(finder.Names), finder);
    }

    // What cannot be written is refused as an input is: the answer stands printed by then.
    private static IReadOnlyList<(string Ending, byte[] Bytes)> Written(Answer answer, FileChoice choice, OutputFile file)
    {
        try
        {
            return answer.Written(choice.Name, file.IsThrough ? choice.Name : Path.GetFileNameWithoutExtension(file.Name));
        }
        catch (RefusedValueException refusal)
        {
            throw new Stopped($"heaveline: --{choice.Name} '{file.Name}' is not written: {refusal.Message}", ExitCode.Refused);
        }
    }

    private sealed record Outputs<TAnswer>(
        bool All,
        bool Json,
        OutputFile? Csv,
        OutputFile? Figure,
        IReadOnlyList<(FileChoice Choice, OutputFile File)> Others,
        IReadOnlyList<(FurtherFile<TAnswer> Made, OutputFile File)> Further)
    {
        public IEnumerable<OutputFile> Files => new[] { Csv, Figure }.OfType<OutputFile>().Concat(Others.Select(other => other.File))
            .Concat(Further.Select(further => further.File));

        /// <summary>The same with those that are written beside them.</summary>
        public IEnumerable<OutputFile> Written =>
            [.. Files, .. Others.Where(other => !other.File.IsThrough).SelectMany(other => other.Choice.Beside.Select(other.File.Beside))];
    }
}
