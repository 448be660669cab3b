using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Causes;
using Heaveline.Cli.Output;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>Why a car pitches: ranked causes with their sizes and the road test that would prove each.</summary>
internal static class WhyCommand
{
    public static Command Of(Streams streams)
    {
        var car = new Argument<string>("CAR") { Description = "A car file or a variant." };
        var road = Options.Road();
        var speed = new Option<string>("--speed") { Description = "Speed with its unit.", HelpName = "SPEED", DefaultValueFactory = _ => "50 km/h" };
        var load = Options.Load();
        var json = Options.Json();
        var figure = Options.Figure();
        var command = new Command(
            "why",
            """
            Say why a car pitches over a road: frequency ratio, damping and its split, inertia, wheelbase, load, friction, stops, tyres, interconnection; each with its share and the road test that would prove it.

            Example:
              heaveline why examples/garage/fern-saloon.yaml --load "four up with luggage" --speed "40 km/h"
            """)
        {
            car,
            road,
            speed,
            load,
            json,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams, r.GetValue(car)!, r.GetValue(road)!, r.GetValue(speed)!, r.GetValue(load), r.GetValue(json), r.GetValue(figure), stop)));
        return command;
    }

    private static int Run(Streams streams, string carPath, string roadWords, string speedWords, string? loadName, bool json, string? figure, CancellationToken stop)
    {
        Inputs.Picture(figure);
        var speed = Inputs.Speed(speedWords);
        var car = Inputs.Car(carPath, streams);
        var road = Inputs.Road(roadWords, streams);
        var model = Inputs.Model(car, Inputs.Load(car, loadName));
        var why = Why.Of(model, road, speed, degree: Environment.ProcessorCount, cancellation: stop);
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("why", [Table(why.Settling), Table(why.Hit)], new JsonObject
            {
                ["car"] = car.Name,
                ["load"] = model.Load.Name,
                ["road"] = road.Caption,
                ["sentences"] = FactJson.Texts(why.Settling.Causes.Select(c => c.Sentence)),
                ["tests"] = FactJson.Texts(why.Settling.Causes.Select(c => c.Proof)),
            }));
        }
        else
        {
            streams.Results.WriteLine(FormattableString.Invariant($"{car.Name}, {model.Load.Name}, over {road.Caption} at {In.KilometresPerHour.Of(speed):F0} km/h."));
            Say(streams, why.Settling, withTests: true);
            Say(streams, why.Hit, withTests: false);
            streams.Results.WriteLine();
            streams.Results.WriteLine(WhySentences.Method(why));
            streams.Results.WriteLine("Test off public roads. " + Cautions.Short);
        }

        if (figure is not null)
        {
            Pictures.Write(streams, WhyFigure.Of(why), figure);
        }

        return ExitCode.Done;
    }

    private static void Say(Streams streams, WhyRanking ranking, bool withTests)
    {
        streams.Results.WriteLine();
        streams.Results.WriteLine(WhySentences.Opening(ranking));
        foreach (var (sentence, proof) in WhySentences.Causes(ranking))
        {
            streams.Results.WriteLine($"  {sentence}");
            if (withTests && proof is not null)
            {
                streams.Results.WriteLine($"    To prove it: {proof}");
            }
        }

        if (WhySentences.Rest(ranking) is { } rest)
        {
            streams.Results.WriteLine($"  {rest}");
        }
    }

    private static FactTable Table(WhyRanking ranking)
    {
        var table = new FactTable(ranking.Measure.Name, ["share of the measure, %", "alone, %"]);
        foreach (var cause in ranking.Causes)
        {
            table.Add(cause.Kind.ToString(), cause.Is, "%", "F1", [100.0 * cause.Relative, 100.0 * cause.Alone / ranking.Value]);
        }

        return table;
    }
}
