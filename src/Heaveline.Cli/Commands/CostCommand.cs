using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Doubts;
using Heaveline.Measures;

namespace Heaveline.Cli.Commands;

/// <summary>What a change costs elsewhere: roll, dive, squat, height, travel, stress, headlamp; and what to check after it.</summary>
internal static class CostCommand
{
    public static Command Of(Streams streams)
    {
        var cars = new Argument<string[]>("CAR") { Description = "The car before, then after the change; one car alone shows where it stands.", Arity = new ArgumentArity(1, 2) };
        var load = Options.Load();
        var samples = Options.Samples(1000);
        var seed = Options.Seed();
        var json = Options.Json();
        var command = new Command(
            "cost",
            """
            Say what a change costs elsewhere: roll and its front share, pitch in braking and accelerating, heights, travel left, spring stress, headlamp aim, and what must be checked after it. Where the car files state doubts, each number and each change has its interval.

            Example:
              heaveline cost examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --load "four up with luggage"
            """)
        {
            cars,
            load,
            samples,
            seed,
            json,
        };
        command.SetAction((r, stop) => Task.FromResult(Run(streams, r.GetValue(cars)!, r.GetValue(load), r.GetValue(samples), r.GetValue(seed), r.GetValue(json), stop)));
        return command;
    }

    private static int Run(Streams streams, string[] paths, string? loadName, int samples, ulong seed, bool json, CancellationToken stop)
    {
        var cars = paths.Select(p => Inputs.Car(p, streams)).ToList();
        var models = cars.Select(c => Inputs.Model(c, Inputs.Load(c, loadName))).ToList();
        var rests = models.Select(m => new CarAtRest(m)).ToList();
        var effects = rests.Select(r => r.SideEffects).ToList();
        string[] names = [.. cars.Select(c => c.Name)];
        var measures = CostTable.Measures(rests);
        List<FactTable> tables = [CostTable.Of(names, rests)];
        JointStudy? study = null;
        CarDoubts[] doubts = [.. models.Select(m => CarDoubts.Of(m.Car, m.Load))];
        if (doubts.Any(d => d.AreStated))
        {
            using var progress = new Progress(streams, "draws", samples);
            study = JointStudy.Of(doubts, measures, samples, seed, Environment.ProcessorCount, progress, stop);
            tables.AddRange(DoubtTables.Of("Side effects", names, measures, study));
        }

        IReadOnlyList<string> reminders = effects.Count == 2 ? ChangeReminders.Of(cars[0], cars[1], SideEffectsChange.Between(effects[0], effects[1])) : [];
        string[] notes = [.. study is null ? [] : new[] { DoubtTables.Words(study, cars.Count > 1) }, .. effects.SelectMany(e => e.Notes).Distinct()];
        var ranges = LampWords.Of(effects[^1]);
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("cost", tables, new JsonObject
            {
                ["load"] = models[0].Load.Name,
                ["samples"] = study?.Samples,
                ["seed"] = study?.Seed,
                ["notes"] = FactJson.Texts(notes),
                ["headlamp"] = FactJson.Texts(ranges),
                ["reminders"] = FactJson.Texts(reminders),
            }));
            return ExitCode.Done;
        }

        streams.Results.WriteLine($"{string.Join("; ", cars.Select(c => c.Name))}, {models[0].Load.Name}.");
        foreach (var table in tables)
        {
            streams.Results.WriteLine();
            streams.Results.Write(FactText.Of(table));
        }

        streams.Results.WriteLine();
        foreach (var sentence in notes.Concat(ranges).Concat(reminders))
        {
            streams.Results.WriteLine(sentence);
        }

        foreach (var caution in Cautions.All)
        {
            streams.Results.WriteLine(caution);
        }

        return ExitCode.Done;
    }
}
