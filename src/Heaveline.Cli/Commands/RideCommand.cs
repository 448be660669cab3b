using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Figures;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>Comfort and pitch on a random road of a class, over speed, for cars or variants.</summary>
internal static class RideCommand
{
    public static Command Of(Streams streams)
    {
        var cars = new Argument<string[]>("CAR") { Description = "Car files or variants.", Arity = ArgumentArity.OneOrMore };
        var roadClass = new Option<string>("--class") { Description = "Road class A to H (ISO 8608), A the smoothest.", HelpName = "CLASS", DefaultValueFactory = _ => "C" };
        var speed = new Option<string>("--speed") { Description = "One speed or several with commas between.", HelpName = "SPEEDS", DefaultValueFactory = _ => "30 km/h, 50 km/h, 80 km/h, 110 km/h" };
        var load = Options.Load();
        var inTime = new Option<bool>("--in-time") { Description = "Also drive the whole car over made roads of the class, every bend in, and give the interval that chance leaves." };
        var doubt = Options.Doubt();
        var samples = Options.Samples(200);
        var seed = Options.Seed(" It seeds the made roads as well.");
        var draw = new Option<string>("--draw") { Description = "What the figure shows: sweep (measures over speed), spectra (first car and speed, with the wheelbase filter) or transfer (road to body).", HelpName = "WHAT", DefaultValueFactory = _ => "sweep" };
        draw.AcceptOnlyFromAmong("sweep", "spectra", "transfer");
        var json = Options.Json();
        var figure = Options.Figure();
        var command = new Command(
            "ride",
            """
            Say how cars ride on a random road of a class at several speeds: pitch and heave as they are, and what the comfort standard counts of them.

            Examples:
              heaveline ride examples/garage/fern-saloon.yaml --class C --load driver
              heaveline ride examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --figure ride.pdf
              heaveline ride examples/garage/fern-saloon.yaml --speed "80 km/h" --draw spectra --figure spectra.svg
              heaveline ride examples/garage/fern-saloon.yaml --speed "60 km/h" --doubt
            """)
        {
            cars,
            roadClass,
            speed,
            load,
            inTime,
            doubt,
            samples,
            seed,
            draw,
            json,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams,
            r.GetValue(cars)!,
            Class(r.GetValue(roadClass)!),
            r.GetValue(speed)!,
            r.GetValue(load),
            r.GetValue(inTime) ? r.GetValue(seed) : null,
            r.GetValue(doubt) ? r.GetValue(samples) : null,
            r.GetValue(seed),
            r.GetValue(draw)!,
            r.GetValue(json),
            r.GetValue(figure),
            stop)));
        return command;
    }

    internal static RoadClass Class(string letter) =>
        RoadClass.All.FirstOrDefault(c => string.Equals(c.Letter.ToString(), letter, StringComparison.OrdinalIgnoreCase))
        ?? throw new Stopped($"heaveline: '{letter}' is no road class; there are A to H, A the smoothest.", ExitCode.WrongUsage);

    private static int Run(
        Streams streams, string[] paths, RoadClass roadClass, string speedWords, string? loadName, ulong? roads, int? samples, ulong seed, string draw, bool json, string? figure, CancellationToken stop)
    {
        var speeds = Inputs.Speeds(speedWords);
        Inputs.Picture(figure);
        var spectrum = RoadSpectrum.Of(roadClass);
        var all = new List<(string Name, IReadOnlyList<RandomResponse> Responses)>();
        var tables = new List<FactTable>();
        var cautions = new List<string>();
        var made = new List<IReadOnlyList<RandomPass>>();
        using (var progress = new Progress(streams, "speeds", paths.Length * speeds.Count))
        {
            foreach (var path in paths)
            {
                var car = Inputs.Car(path, streams);
                var model = Inputs.Model(car, Inputs.Load(car, loadName));
                var responses = new List<RandomResponse>();
                var passes = roads is null ? null : new List<RandomPass>();
                foreach (var v in speeds)
                {
                    var response = RandomResponse.Of(model, spectrum, v, cancellation: stop);
                    responses.Add(response);
                    cautions.AddRange(response.Cautions.Append(response.OutcomeSentence).Where(c => c.Length > 0).Select(c => FormattableString.Invariant($"{car.Name} at {3.6 * v:F0} km/h: {c}")));
                    passes?.Add(RandomPass.Of(model, spectrum, v, RandomPassOptions.Default with { Seed = roads!.Value }, stop));
                    progress.Step();
                }

                all.Add((car.Name, responses));
                tables.Add(RideTable.Of(car.Name, responses, passes));
                made.Add(passes ?? []);
            }
        }

        if (samples is { } draws)
        {
            var (more, words) = RideDoubts.Of(streams, all, spectrum, draws, seed, stop);
            tables.AddRange(more);
            cautions.Add(words);
        }

        Say(streams, all, tables, cautions, roadClass, json);
        if (figure is not null)
        {
            var first = all[0].Responses[0];
            Pictures.Write(
                streams,
                draw switch
                {
                    "spectra" => RideSpectraFigure.Of(first),
                    "transfer" => TransferFigure.Of(first.Model, first.Speed),
                    _ => RideSweepFigure.Of(all, roads is null ? null : made),
                },
                figure);
        }

        return ExitCode.Done;
    }

    private static void Say(
        Streams streams, List<(string Name, IReadOnlyList<RandomResponse> Responses)> all, List<FactTable> tables, List<string> cautions, RoadClass roadClass, bool json)
    {
        var load = all[0].Responses[0].Model.Load.Name;
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("ride", tables, new JsonObject { ["road"] = roadClass.ToString(), ["load"] = load, ["cautions"] = FactJson.Texts(cautions) }));
            return;
        }

        streams.Results.WriteLine($"On a random road of {roadClass} (ISO 8608, geometric mean), {load}.");
        foreach (var table in tables)
        {
            streams.Results.WriteLine();
            streams.Results.Write(FactText.Of(table));
        }

        streams.Results.WriteLine();
        foreach (var caution in cautions)
        {
            streams.Results.WriteLine(caution);
        }

        streams.Results.WriteLine(RideWords.Both);
        streams.Results.WriteLine(Cautions.Short);
    }
}
