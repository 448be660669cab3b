using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Models;
using Heaveline.Roads;
using Heaveline.Rules;

namespace Heaveline.Cli.Commands;

/// <summary>A rule of the trade as a map over speed: where it is true for this car, where false, where it makes no difference.</summary>
internal static class MapCommand
{
    private const int Values = 25;
    private const int FineValues = 61;
    private const int Speeds = 21;
    private const int FineSpeeds = 201;

    public static Command Of(Streams streams)
    {
        var car = new Argument<string>("CAR") { Description = "A car file or a variant." };
        var rule = new Option<string>("--rule")
        {
            Description = "What is turned: ratio (rear over front frequency), damping, index (dynamic index), wheelbase (inertia grows with it), wheelbase-same-body (inertia kept), shared-springs, shared-damping (the share of a common spring or damper of front and rear).",
            HelpName = "RULE",
            DefaultValueFactory = _ => "ratio",
        };
        rule.AcceptOnlyFromAmong([.. MapRule.Words]);
        var measure = new Option<string>("--measure")
        {
            Description = "By what it is judged: settling (RMS pitch in the first second after the rear has left), late (what is left after 0.8 s), hit (peak pitch acceleration until then) or hit-angle (peak pitch angle until then).",
            HelpName = "MEASURE",
            DefaultValueFactory = _ => "settling",
        };
        measure.AcceptOnlyFromAmong([.. MapRule.Measures]);
        var road = Options.Road();
        var from = new Option<string>("--from") { Description = "Slowest speed.", HelpName = "SPEED", DefaultValueFactory = _ => "20 km/h" };
        var to = new Option<string>("--to") { Description = "Fastest speed.", HelpName = "SPEED", DefaultValueFactory = _ => "120 km/h" };
        var count = new Option<int?>("--speeds") { Description = $"How many speeds, 2 to 400. Without it: {Speeds}, with --fine {FineSpeeds}.", HelpName = "NUMBER" };
        var fine = new Option<bool>("--fine") { Description = $"A fine map: {FineValues} values instead of {Values}." };
        var load = Options.Load();
        var json = Options.Json();
        var csv = new Option<string?>("--csv") { Description = "Write every place of the map to FILE.", HelpName = "FILE" };
        var figure = Options.Figure();
        var command = new Command(
            "map",
            """
            Map a rule of the trade over speed for this car: where it is true, where it is false, where it makes no difference, and where the car stands at every load.

            Examples:
              heaveline map examples/garage/fern-saloon.yaml --load driver
              heaveline map examples/garage/fern-saloon.yaml --rule damping --measure hit
              heaveline map examples/garage/fern-saloon.yaml --rule wheelbase-same-body --from "30 km/h" --to "90 km/h" --fine --figure wheelbase.pdf
            """)
        {
            car,
            rule,
            measure,
            road,
            from,
            to,
            count,
            fine,
            load,
            json,
            csv,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams,
            new MapAsked(
                r.GetValue(car)!, r.GetValue(rule)!, r.GetValue(measure)!, r.GetValue(road)!, r.GetValue(from)!, r.GetValue(to)!,
                r.GetValue(count) ?? (r.GetValue(fine) ? FineSpeeds : Speeds), r.GetValue(fine) ? FineValues : Values, r.GetValue(load)),
            r.GetValue(json),
            r.GetValue(csv),
            r.GetValue(figure),
            stop)));
        return command;
    }

    private static int Run(Streams streams, MapAsked asked, bool json, string? csv, string? figure, CancellationToken stop)
    {
        Inputs.Picture(figure);
        var speeds = asked.SpeedList();
        var car = Inputs.Car(asked.Car, streams);
        var model = Inputs.Model(car, Inputs.Load(car, asked.Load));
        var road = Inputs.Road(asked.Road, streams);
        if (road.Event is null)
        {
            throw new Stopped($"heaveline: {road.Caption} has no single bump, so that hit and settling cannot be told apart; give an obstacle after --road ('heaveline road' lists them).", ExitCode.Refused);
        }

        var map = MapOf(streams, asked, model, road, speeds, stop);
        var isRatio = asked.Rule == "ratio";
        var stretch = asked.Rule == "damping" ? RoughStretch.Between(speeds[0], speeds[^1]) : null;
        var answer = new MapAnswer
        {
            Map = map,
            Loads = [.. Inputs.AllLoads(car).Select(l => l.Name == model.Load.Name ? MapLoad.Of(map, isRatio) : AtLoad(car, l, asked, road, speeds, isRatio, stop))],
            Damping = stretch is null ? null : (DampingOptima.Of(model, stretch.Road, stretch.Speed, map.Axis.Values, degree: Environment.ProcessorCount, cancellation: stop), stretch.Words),
        };
        if (json)
        {
            streams.Results.WriteLine(answer.Json(Release.Version));
        }
        else
        {
            streams.Results.WriteLine(MapSentences.Head(map));
            streams.Results.WriteLine();
            streams.Results.Write(FactText.Of(MapTable.Grid(map, answer.Rules, whole: false)));
            streams.Results.WriteLine();
            foreach (var sentence in answer.Sentences(withOptions: true))
            {
                streams.Results.WriteLine(sentence);
            }

            streams.Results.WriteLine(Cautions.Short);
        }

        if (csv is not null)
        {
            WholeFile.Write(csv, MapCsv.Of(map));
        }

        if (figure is not null)
        {
            Pictures.Write(streams, answer.Figure, figure);
        }

        return ExitCode.Done;
    }

    private static RuleMap MapOf(Streams streams, MapAsked asked, RideModel model, Road road, IReadOnlyList<double> speeds, CancellationToken stop)
    {
        var axis = MapRule.Of(asked.Rule, model, asked.Values);
        using var progress = new Progress(streams, "places", axis.Values.Count * speeds.Count);
        var map = RuleMap.Of(model, road, axis, speeds, [MapRule.Measure(asked.Measure)], degree: Environment.ProcessorCount, cancellation: stop, progress: progress)[0];
        return map.Best.Any(b => b is not null)
            ? map
            : throw new Stopped($"heaveline: no place of this map could be computed: {map.Refusals.FirstOrDefault(r => r.Length > 0) ?? "every pass left the model's range"}", ExitCode.NotComputed);
    }

    // Another load asks for a map of its own, since masses and rates change with it; a coarse one tells the speed.
    private static MapLoad AtLoad(Cars.Car car, Cars.LoadState load, MapAsked asked, Road road, IReadOnlyList<double> speeds, bool isRatio, CancellationToken stop)
    {
        var model = Inputs.Model(car, load);
        var axis = MapRule.Of(asked.Rule, model, Values);
        return isRatio
            ? MapLoad.Of(RuleMap.Of(model, road, axis, Coarse(speeds), [MapRule.Measure(asked.Measure)], degree: Environment.ProcessorCount, cancellation: stop)[0], isRatio)
            : new MapLoad(load.Name, axis.Own(model), null, null, null);
    }

    private static IReadOnlyList<double> Coarse(IReadOnlyList<double> speeds) =>
        speeds.Count <= Speeds ? speeds : [.. Enumerable.Range(0, Speeds).Select(i => speeds[0] + ((speeds[^1] - speeds[0]) * i / (Speeds - 1)))];
}
