using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Modes;

namespace Heaveline.Cli.Commands;

/// <summary>What a car is at every load state: standing, axles, modes.</summary>
internal static class DescribeCommand
{
    public static Command Of(Streams streams)
    {
        var car = new Argument<string>("CAR") { Description = "A car file or a variant." };
        var json = Options.Json();
        var figure = Options.Figure();
        var modes = new Option<bool>("--modes") { Description = "List all damped modes of the load state (as described without --load), and draw the body's two modes instead of the load states." };
        var load = Options.OneLoad();
        var doubt = Options.Doubt();
        var samples = Options.Samples(1000);
        var seed = Options.Seed();
        var command = new Command(
            "describe",
            """
            Say how a car stands and swings at every load state: loads, heights, travel left, wheel rates, ride frequencies, damping, modes.

            Examples:
              heaveline describe examples/garage/fern-saloon.yaml
              heaveline describe examples/garage/fern-saloon.yaml --load "four up with luggage" --modes --figure modes.pdf
              heaveline describe examples/garage/fern-saloon.yaml --load driver --doubt
            """)
        {
            car,
            load,
            modes,
            doubt,
            samples,
            seed,
            json,
            figure,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(
            streams, r.GetValue(car)!, r.GetValue(load), r.GetValue(modes), r.GetValue(doubt) ? r.GetValue(samples) : null, r.GetValue(seed), r.GetValue(json), r.GetValue(figure), stop)));
        return command;
    }

    private static int Run(Streams streams, string path, string? load, bool withModes, int? samples, ulong seed, bool json, string? figure, CancellationToken stop)
    {
        Inputs.Picture(figure);
        var car = Inputs.Car(path, streams);
        var loads = load is null ? Inputs.AllLoads(car) : [Inputs.Load(car, load)];
        var models = loads.Select(l => Inputs.Model(car, l)).ToList();
        var rests = models.Select(m => new CarAtRest(m)).ToList();
        var tables = DescribeTable.Of(rests).ToList();
        if (withModes)
        {
            tables.Add(ModesTable.Of(models[0]));
        }

        List<string> notes = [];
        if (samples is { } draws)
        {
            notes.Add(Doubts(streams, rests, draws, seed, tables, stop));
        }

        notes.AddRange([.. DescribeNotes.Of(models), Cautions.Short]);

        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("describe", tables, new JsonObject { ["car"] = car.Name, ["notes"] = FactJson.Texts(notes) }));
        }
        else
        {
            streams.Results.WriteLine(car.Name);
            foreach (var table in tables)
            {
                streams.Results.WriteLine();
                streams.Results.Write(FactText.Of(table));
            }

            streams.Results.WriteLine();
            foreach (var note in notes)
            {
                streams.Results.WriteLine(note);
            }
        }

        if (figure is not null)
        {
            Pictures.Write(streams, withModes ? ModesFigure.Of(models[0], BodyModes.Of(models[0])) : LoadStatesFigure.Of(models), figure);
        }

        return ExitCode.Done;
    }

    // Adds a table of intervals for each part and load state, and says how they came about.
    private static string Doubts(Streams streams, List<CarAtRest> rests, int samples, ulong seed, List<FactTable> tables, CancellationToken stop)
    {
        var words = "";
        using var progress = new Progress(streams, "draws", samples);
        foreach (var (k, model) in rests.Select(r => r.Model).Index())
        {
            var study = JointStudy.Of([CarDoubts.Of(model.Car, model.Load)], RestCatalogue.All, samples, seed, Environment.ProcessorCount, progress.Part(k, rests.Count), stop);
            tables.AddRange(DoubtTables.Of(model.Load.Name, [model.Car.Name], RestCatalogue.All, study));
            words = DoubtTables.Words(study, several: false);
        }

        return words;
    }
}
