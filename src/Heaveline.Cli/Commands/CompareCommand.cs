using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Figures;
using Heaveline.Insight;
using Heaveline.Measures;
using Heaveline.Press;
using Heaveline.Responses;

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
        var json = Options.Json();
        var figure = Options.Figure();
        var command = new Command(
            "compare",
            """
            Drive several cars or variants over one road and set their numbers side by side.

            Examples:
              heaveline compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --load "four up with luggage"
              heaveline compare A.yaml B.yaml --speed "30 km/h, 50 km/h, 80 km/h" --figure compare.pdf
            """)
        {
            cars,
            road,
            speed,
            load,
            json,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams, r.GetValue(cars)!, r.GetValue(road)!, r.GetValue(speed)!, r.GetValue(load), r.GetValue(json), r.GetValue(figure), stop)));
        return command;
    }

    private static int Run(Streams streams, string[] paths, string roadWords, string speedWords, string? loadName, bool json, string? figure, CancellationToken stop)
    {
        if (paths.Length < 2)
        {
            throw new Stopped("heaveline: compare needs two cars or variants.", ExitCode.WrongUsage);
        }

        var speeds = Inputs.Speeds(speedWords);
        var road = Inputs.Road(roadWords, streams);
        var models = paths.Select(p => Inputs.Car(p, streams)).Select(car => Inputs.Model(car, Inputs.Load(car, loadName))).ToList();
        string[] names = [.. models.Select(m => m.Car.Name)];
        var tables = new List<FactTable>();
        var all = new List<IReadOnlyList<ComparedPass>>();
        using (var progress = new Progress(streams, "passes", models.Count * speeds.Count))
        {
            foreach (var speed in speeds)
            {
                var passes = new List<ComparedPass>();
                foreach (var model in models)
                {
                    var pass = Pass.Of(model, road, speed, cancellation: stop);
                    if (pass.Outcome != PassOutcome.Completed)
                    {
                        throw new Stopped($"heaveline: {model.Car.Name} at {3.6 * speed:F0} km/h ({pass.Outcome}): {pass.OutcomeSentence}", ExitCode.NotComputed);
                    }

                    passes.Add(new ComparedPass(model.Car.Name, pass, PassMeasures.Of(pass)));
                    progress.Step();
                }

                tables.Add(PassTable.Of(
                    string.Create(CultureInfo.InvariantCulture, $"At {3.6 * speed:F0} km/h"), names, [.. passes.Select(p => (p.Pass, p.Measures))]));
                all.Add(passes);
            }
        }

        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("compare", tables, new JsonObject
            {
                ["cars"] = FactJson.Texts(names),
                ["loads"] = FactJson.Texts(models.Select(m => m.Load.Name)),
                ["road"] = road.Caption,
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
            streams.Results.WriteLine(Cautions.Short);
        }

        if (figure is not null)
        {
            FigureFile.Write(speeds.Count > 1 ? CompareFigure.OverSpeed(all) : CompareFigure.Of(all[0]), figure);
        }

        return ExitCode.Done;
    }
}
