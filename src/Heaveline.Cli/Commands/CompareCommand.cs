using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Figures;
using Heaveline.Files;
using Heaveline.Files.Passes;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>Several cars or variants over one road, at one or several speeds.</summary>
internal static class CompareCommand
{
    public static Command Of(Streams streams)
    {
        var cars = new Argument<string[]>("CAR") { Description = "Two car files or variants, or more. The first is what the others are measured against.", Arity = ArgumentArity.OneOrMore };
        var road = Options.Road();
        var speed = new Option<string>("--speed") { Description = "One speed or several with commas between.", HelpName = "SPEEDS", DefaultValueFactory = _ => "50 km/h" };
        var load = Options.Load();
        var doubt = Options.Doubt();
        var samples = Options.Samples(1000);
        var seed = Options.Seed();
        var json = Options.Json();
        var csv = Options.Csv();
        var figure = Options.Figure();
        var command = new Command(
            "compare",
            """
            Drive several cars or variants over one road and set their numbers side by side.

            Examples:
              heaveline compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --load "four up with luggage"
              heaveline compare A.yaml B.yaml --speed "30 km/h, 50 km/h, 80 km/h" --figure compare.pdf
              heaveline compare A.yaml B.yaml --doubt
            """)
        {
            cars,
            road,
            speed,
            load,
            doubt,
            samples,
            seed,
            json,
            csv,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams, r.GetValue(cars)!, r.GetValue(road)!, r.GetValue(speed)!, r.GetValue(load), r.GetValue(doubt) ? r.GetValue(samples) : null, r.GetValue(seed), r.GetValue(json), r.GetValue(csv), r.GetValue(figure), stop)));
        return command;
    }

    private static int Run(Streams streams, string[] paths, string roadWords, string speedWords, string? loadName, int? samples, ulong seed, bool json, string? csv, string? figure, CancellationToken stop)
    {
        if (paths.Length < 2)
        {
            throw new Stopped("heaveline: compare needs two cars or variants.", ExitCode.WrongUsage);
        }

        var speeds = Inputs.Speeds(speedWords);
        Inputs.Picture(figure);
        if (csv is not null && speeds.Count > 1)
        {
            throw new Stopped("heaveline: traces go into --csv for one speed at a time; give one.", ExitCode.WrongUsage);
        }

        var road = Inputs.Road(roadWords, streams);
        var models = paths.Select(p => Inputs.Car(p, streams)).Select(car => Inputs.Model(car, Inputs.Load(car, loadName))).ToList();
        var names = Names(paths, models);
        var passes = Drive(streams, models, road, speeds, stop);
        var tables = speeds.Select((v, k) => PassTable.Of(
            string.Create(CultureInfo.InvariantCulture, $"At {In.KilometresPerHour.Of(v):F0} km/h"), names, [.. passes.Select(car => car[k])])).ToList();
        string[] words = [];
        if (samples is { } draws)
        {
            var (more, said) = CompareDoubts.Of(streams, names, models, road, speeds, draws, seed, stop);
            tables.AddRange(more);
            words = [said];
        }

        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("compare", tables, new JsonObject
            {
                ["cars"] = FactJson.Texts(names),
                ["loads"] = FactJson.Texts(models.Select(m => m.Load.Name)),
                ["road"] = road.Caption,
                ["notes"] = FactJson.Texts(words),
            }));
        }
        else
        {
            streams.Results.WriteLine($"Over {road.Caption}, {models[0].Load.Name}.");
            foreach (var table in tables)
            {
                streams.Results.WriteLine();
                streams.Results.Write(FactText.Of(table));
            }

            streams.Results.WriteLine();
            foreach (var sentence in words.Append(Cautions.Short))
            {
                streams.Results.WriteLine(sentence);
            }
        }

        if (csv is not null)
        {
            WholeFile.Write(csv, TraceCsv.Of([.. names.Select((name, i) => (name, passes[i][0].Pass))]));
        }

        if (figure is not null)
        {
            Pictures.Write(
                streams,
                speeds.Count > 1
                    ? CompareSpeedsFigure.Of([.. names.Select((name, i) => (name, passes[i]))])
                    : CompareFigure.Of([.. names.Select((name, i) => (name, passes[i][0].Pass, passes[i][0].Measures))]),
                figure);
        }

        return ExitCode.Done;
    }

    // Cars of one name are told apart by their files.
    private static string[] Names(string[] paths, List<RideModel> models) =>
        [.. models.Select((m, i) => models.Count(other => other.Car.Name == m.Car.Name) == 1 ? m.Car.Name : $"{m.Car.Name} ({Path.GetFileNameWithoutExtension(paths[i])})")];

    // All cars at one speed run side by side, so that they share one length of record.
    private static List<IReadOnlyList<(Pass Pass, PassMeasures Measures)>> Drive(
        Streams streams, List<RideModel> models, Road road, IReadOnlyList<double> speeds, CancellationToken stop)
    {
        var all = models.Select(_ => new List<(Pass Pass, PassMeasures Measures)>()).ToList();
        using var progress = new Progress(streams, "speeds", speeds.Count);
        foreach (var speed in speeds)
        {
            var passes = PassBatch.Of([.. models.Select(m => new PassRequest(m, road, speed))], cancellation: stop);
            if (passes.FirstOrDefault(p => p.Outcome != PassOutcome.Completed) is { } failed)
            {
                throw new Stopped($"heaveline: {failed.Model.Car.Name} at {In.KilometresPerHour.Of(failed.Speed):F0} km/h ({failed.Outcome}): {failed.OutcomeSentence}", ExitCode.NotComputed);
            }

            for (var i = 0; i < passes.Count; i++)
            {
                all[i].Add((passes[i], PassMeasures.Of(passes[i])));
            }

            progress.Step();
        }

        return [.. all];
    }
}
