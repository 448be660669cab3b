using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Choosing;
using Heaveline.Files.Crews;
using Heaveline.Files.Drives;
using Heaveline.Files.Films;
using Heaveline.Files.Garages;
using Heaveline.Files.Parts;
using Heaveline.Files.Ties;

namespace Heaveline.Cli.Commands;

/// <summary>
/// Reads car files, what was written down about drives, sheets of cable ties, lists of parts and studies, and says all that is wrong or doubtful in
/// them.
/// </summary>
internal static class CheckCommand
{
    public static Command Of(Streams streams)
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Car files, variants, files of drives, sheets of cable ties, lists of parts, studies, crews.",
            Arity = ArgumentArity.OneOrMore,
        };
        var json = Options.Json();
        var command = new Command(
            "check",
            """
            Read car files and say all that is wrong or doubtful in them, each with its line.

            Example:
              heaveline check examples/garage/*.yaml
            """)
        {
            files,
            json,
        };
        command.SetAction(r => Run(streams, r.GetValue(files)!, r.GetValue(json)));
        return command;
    }

    private static int Run(Streams streams, string[] files, bool json)
    {
        var refused = 0;
        var remarks = new System.Text.Json.Nodes.JsonArray();
        foreach (var file in files)
        {
            var (refusals, warnings, said) = Read(streams, file);
            refused += refusals.Count;
            foreach (var (kind, place, line, column, message, advice) in refusals
                .Select(r => ("refused", r.File, r.Line, r.Column, r.Message, r.Advice))
                .Concat(warnings.Select(w => ("warning", w.File, w.Line, w.Column, w.Message, w.Advice))))
            {
                remarks.Add((System.Text.Json.Nodes.JsonNode)new System.Text.Json.Nodes.JsonObject
                {
                    ["kind"] = kind, ["file"] = place, ["line"] = line, ["column"] = column, ["message"] = message, ["advice"] = advice,
                });
            }

            if (!json)
            {
                if (refusals.Count + warnings.Count > 0)
                {
                    streams.Remarks.WriteLine(said());
                }

                streams.Results.WriteLine(
                    refusals.Count > 0 ? $"{file}: {refusals.Count} refused, {warnings.Count} doubtful"
                    : warnings.Count > 0 ? $"{file}: can be used, {warnings.Count} doubtful"
                    : $"{file}: in order");
            }
        }

        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("check", [], new System.Text.Json.Nodes.JsonObject { ["remarks"] = remarks }));
        }

        return refused > 0 ? ExitCode.Refused : ExitCode.Done;
    }

    // Whatever else a study names is read as well: it must be there, and what is asked of it must be in it.
    private static (IReadOnlyList<Refusal> Refusals, IReadOnlyList<Warning> Warnings, Func<string> Said) Study(Streams streams, string file)
    {
        var study = StudyFile.Load(file);
        if (study.Value is not { } sheet)
        {
            return (study.Refusals, study.Warnings, study.Format);
        }

        var asked = ChooseStudy.Question.Read(new Given([(Choices.Car.Name, file)]), new FileFinder(streams, CancellationToken.None));
        study = study with
        {
            Refusals = [.. asked.Objections.Select(o => o.Written is { } written
                ? new Refusal(file, written.Line.Line, written.Line.Column, written.Line.Length, o.Sentence, "")
                : new Refusal(file, 1, 1, 1, o.Sentence, ""))],
            // Its own were said when the question read it.
            Warnings = [],
        };
        return (study.Refusals, study.Warnings, study.Format);
    }

    // A study, a drive, a film, a crew, a sheet of ties and a list of parts are told by their first words; whatever else there is was meant as a car.
    private static (IReadOnlyList<Refusal> Refusals, IReadOnlyList<Warning> Warnings, Func<string> Said) Read(Streams streams, string file)
    {
        if (SourceText.Load(file, FileFormat.LongestText) is { Refusal: null, Source: var source })
        {
            if (DriveFile.IsDrive(source))
            {
                var drive = NamedDrives.Check(file);
                return (drive.Refusals, drive.Warnings, drive.Format);
            }

            if (StudyFile.IsStudy(source))
            {
                return Study(streams, file);
            }

            if (FilmFile.IsFilm(source))
            {
                var film = FilmFile.Load(file);
                return (film.Refusals, film.Warnings, film.Format);
            }

            if (PartsFile.IsList(source))
            {
                var list = PartsFile.Load(file);
                return (list.Refusals, list.Warnings, list.Format);
            }

            if (CrewFile.IsCrew(source))
            {
                var crew = CrewFile.Load(file);
                return (crew.Refusals, crew.Warnings, crew.Format);
            }

            if (TieFile.IsSheet(source))
            {
                var sheet = TieFile.Load(file);
                sheet = TieFile.Missing(sheet) is { } missing ? sheet with { Value = null, Refusals = [missing] } : sheet;
                return (sheet.Refusals, sheet.Warnings, sheet.Format);
            }
        }

        var car = CarFile.Load(file);
        return (car.Refusals, car.Warnings, car.Format);
    }
}
