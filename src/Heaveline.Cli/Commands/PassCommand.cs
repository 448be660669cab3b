using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Figures;
using Heaveline.Files;
using Heaveline.Files.Passes;
using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Passes;

namespace Heaveline.Cli.Commands;

/// <summary>One crossing of a road by a car at a speed.</summary>
internal static class PassCommand
{
    public static Command Of(Streams streams)
    {
        var car = new Argument<string>("CAR") { Description = "A car file or a variant." };
        var road = Options.Road();
        var speed = new Option<string>("--speed") { Description = "Speed with its unit.", HelpName = "SPEED", DefaultValueFactory = _ => "50 km/h" };
        var load = Options.Load();
        var certified = Options.Certified();
        var comfort = new Option<string?>("--comfort") { Description = "Also evaluate one seat by the comfort standard; the figure then shows what it counts.", HelpName = "SEAT" };
        var json = Options.Json();
        var csv = Options.Csv();
        var figure = Options.Figure();
        var command = new Command(
            "pass",
            """
            Drive a car over a road at a constant speed and say what happens: the hit and the settling apart, seats, travel, grip, headlamp.

            Examples:
              heaveline pass examples/garage/fern-saloon.yaml --road village-hump --speed "40 km/h" --load "four up with luggage"
              heaveline pass examples/garage/fern-saloon.yaml --road examples/roads/country-lane.yaml --figure pass.svg --csv pass.csv
            """)
        {
            car,
            road,
            speed,
            load,
            certified,
            comfort,
            json,
            csv,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams,
            r.GetValue(car)!,
            r.GetValue(road)!,
            r.GetValue(speed)!,
            r.GetValue(load),
            r.GetValue(certified),
            r.GetValue(comfort),
            r.GetValue(json),
            r.GetValue(csv),
            r.GetValue(figure),
            stop)));
        return command;
    }

    private static int Run(Streams streams, string carPath, string roadWords, string speedWords, string? loadName, bool certified, string? seatName, bool json, string? csv, string? figure, CancellationToken stop)
    {
        var speed = Inputs.Speed(speedWords);
        Inputs.Picture(figure);
        var car = Inputs.Car(carPath, streams);
        var road = Inputs.Road(roadWords, streams);
        var model = Inputs.Model(car, Inputs.Load(car, loadName));
        var seat = seatName is null ? null : Inputs.Seat(car, seatName);
        var pass = Pass.Of(model, road, speed, PassOptions.Default with { Certified = certified }, stop);
        var measures = PassMeasures.Of(pass);
        var story = PassStory.Of(pass, measures);

        // A pass that broke off has no settling to speak of: its sentences and its traces only.
        List<FactTable> tables = pass.Outcome == PassOutcome.Completed ? [PassTable.Of("Pass", [model.Load.Name], [(pass, measures)])] : [];
        var comfort = seat is not null && pass.Outcome == PassOutcome.Completed ? PassComfort.Of(pass, seat) : null;
        if (comfort is not null)
        {
            tables.Add(ComfortTable.Of(comfort));
            story = [.. story, .. ComfortTable.Words(comfort)];
        }

        if (json)
        {
            streams.Results.WriteLine(PassJson.Of(Release.Version, pass, tables, story));
        }
        else
        {
            foreach (var sentence in story)
            {
                streams.Results.WriteLine(sentence);
            }

            foreach (var table in tables)
            {
                streams.Results.WriteLine();
                streams.Results.Write(FactText.Of(table));
            }

            streams.Results.WriteLine();
            streams.Results.WriteLine(FormattableString.Invariant($"Computed by {pass.Statistics.Method}: {pass.Statistics.Steps} steps of {1e3 * pass.Statistics.Step:F3} ms."));
            streams.Results.WriteLine(Cautions.Short);
        }

        if (csv is not null)
        {
            WholeFile.Write(csv, TraceCsv.Of(pass));
        }

        if (figure is not null)
        {
            Pictures.Write(streams, comfort is null ? PassFigure.Of(pass, measures) : ComfortCountFigure.Of(pass, comfort), figure);
        }

        if (pass.Outcome != PassOutcome.Completed)
        {
            throw new Stopped($"heaveline: the pass stopped ({pass.Outcome}): {pass.OutcomeSentence}", ExitCode.NotComputed);
        }

        return ExitCode.Done;
    }
}
