using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;

namespace Heaveline.Cli.Commands;

/// <summary>How sure a car's numbers are, given the doubts of its measurements, and which to measure better next.</summary>
internal static class DoubtCommand
{
    public static Command Of(Streams streams)
    {
        var car = new Argument<string>("CAR") { Description = "A car file with doubts (24.5 N/mm ± 5 %)." };
        var road = new Option<string?>("--road") { Description = "Also follow the doubts through a pass over this road.", HelpName = "ROAD" };
        var speed = new Option<string>("--speed") { Description = "Speed of that pass.", HelpName = "SPEED", DefaultValueFactory = _ => "50 km/h" };
        var load = Options.Load();
        var samples = Options.Samples(2000);
        var seed = Options.Seed();
        var json = Options.Json();
        var figure = Options.Figure();
        var command = new Command(
            "doubt",
            """
            Say how sure a car's numbers are, given the doubts of its measurements: each number's band, the chance that the rear is really the softer end, and what to measure better next.

            Examples:
              heaveline doubt examples/garage/fern-saloon.yaml
              heaveline doubt examples/garage/fern-saloon.yaml --road village-hump --speed "40 km/h" --load "four up with luggage" --figure doubt.pdf
            """)
        {
            car,
            road,
            speed,
            load,
            samples,
            seed,
            json,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams, r.GetValue(car)!, r.GetValue(road), r.GetValue(speed)!, r.GetValue(load), r.GetValue(samples), r.GetValue(seed), r.GetValue(json), r.GetValue(figure), stop)));
        return command;
    }

    private static int Run(
        Streams streams, string path, string? roadWords, string speedWords, string? loadName, int samples, ulong seed, bool json, string? figure, CancellationToken stop)
    {
        Inputs.Picture(figure);
        var speed = Inputs.Speed(speedWords);
        var car = Inputs.Car(path, streams);
        var load = Inputs.Load(car, loadName);
        using var progress = new Progress(streams, "draws", samples);
        var atRest = DoubtStudy.Of(car, load, RestCatalogue.For(MeasureUse.Doubt), samples, seed, Environment.ProcessorCount, progress.Part(0, roadWords is null ? 1 : 2), stop);
        var studies = new List<DoubtStudy> { atRest };
        if (roadWords is not null)
        {
            var road = Inputs.Road(roadWords, streams);
            var measures = PassCatalogue.For(Inputs.Model(car, load), road, MeasureUse.Doubt);
            studies.Add(DoubtStudy.OfPasses(car, load, road, speed, measures, samples, seed, degree: Environment.ProcessorCount, progress: progress.Part(1, 2), cancellation: stop));
        }

        List<DoubtResult> results = [.. studies.SelectMany(s => s.Results).Select(r => r.Shown())];
        var table = DrawnTable.Of(results);
        string[] sentences = [.. DrawnTable.Sentences(studies, results)];
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("doubt", [table], new JsonObject
            {
                ["car"] = car.Name, ["load"] = load.Name, ["samples"] = samples, ["seed"] = seed, ["sentences"] = FactJson.Texts(sentences),
            }));
        }
        else
        {
            streams.Results.WriteLine(FormattableString.Invariant($"{car.Name}, {load.Name}: {samples} cars drawn within the stated doubts, seed {seed}."));
            streams.Results.WriteLine();
            streams.Results.Write(FactText.Of(table));
            streams.Results.WriteLine();
            foreach (var sentence in sentences)
            {
                streams.Results.WriteLine(sentence);
            }
        }

        if (figure is not null)
        {
            Pictures.Write(streams, DoubtFigure.Of(car.Name, results, samples, seed), figure);
        }

        return ExitCode.Done;
    }
}
