using System.CommandLine;
using System.Text.Json.Nodes;
using Heaveline.Cli.Output;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Cli.Commands;

/// <summary>A front–rear interconnection on the bench: what it does in heave, pitch, roll and warp, and its price in braking.</summary>
internal static class LinkCommand
{
    public static Command Of(Streams streams)
    {
        var car = new Argument<string>("CAR") { Description = "A car with an interconnection." };
        var load = Options.Load();
        var json = Options.Json();
        var command = new Command(
            "link",
            """
            Put a car's front–rear interconnection on the bench: stiffness and damping in heave, pitch, roll and warp with it and without, the fluid line's mass and resistance, the price in braking.

            Example:
              heaveline link examples/garage/pebble-fluid-car.yaml
            """)
        {
            car,
            load,
            json,
        };
        command.SetAction(r => Run(streams, r.GetValue(car)!, r.GetValue(load), r.GetValue(json)));
        return command;
    }

    private static int Run(Streams streams, string path, string? loadName, bool json)
    {
        var car = Inputs.Car(path, streams);
        var model = Inputs.Model(car, Inputs.Load(car, loadName));
        var bench = InterconnectionBench.Of(model)
            ?? throw new Stopped($"heaveline: {car.Name} has no interconnection; describe one under 'interconnection' in the car file.", ExitCode.Refused);
        IReadOnlyList<FactTable> tables = bench.Line is { } line ? [States(bench), Line(line)] : [States(bench)];
        IReadOnlyList<string> warnings = bench.Line?.Warnings ?? [];
        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("link", tables, new JsonObject { ["car"] = car.Name, ["load"] = model.Load.Name, ["warnings"] = FactJson.Texts(warnings) }));
            return ExitCode.Done;
        }

        streams.Results.WriteLine($"{car.Name}, {model.Load.Name}.");
        foreach (var table in tables)
        {
            streams.Results.WriteLine();
            streams.Results.Write(FactText.Of(table));
        }

        streams.Results.WriteLine();
        foreach (var warning in warnings)
        {
            streams.Results.WriteLine(warning);
        }

        streams.Results.WriteLine(FormattableString.Invariant($"The link carries {100.0 * bench.HeaveShare:F0} % of the stiffness in heave and {100.0 * bench.PitchShare:F0} % in pitch. Shared springs shorten the settling; what they do not resist in pitch is missing in braking too."));
        streams.Results.WriteLine(Cautions.Short);
        return ExitCode.Done;
    }

    private static FactTable States(InterconnectionBench bench)
    {
        IEnumerable<double?> All(Func<BenchState, double?> of) => bench.States.Select(of);
        return new FactTable("Interconnection", [.. bench.States.Select(s => s.Name)])
            .Add("heave-rate", "heave stiffness", "N/mm", "F2", All(s => 1e-3 * s.Stiffness.Heave))
            .Add("pitch-rate", "pitch stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Pitch)))
            .Add("roll-rate", "roll stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Roll)))
            .Add("warp-rate", "warp stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Warp)))
            .Add("heave-damping", "heave damping", "N s/m", "F0", All(s => s.Damping.Heave))
            .Add("pitch-damping", "pitch damping", "N m s", "F0", All(s => s.Damping.Pitch))
            .Add("at-frequency", "frequency at which this holds", "Hz", "F3", All(s => s.Frequency))
            .Add("braking-pitch", "pitch in braking at 0.5 g", "°", "F2", All(s => In.Degrees.Of(s.BrakingPitch)));
    }

    private static FactTable Line(LineBench line) => new FactTable("Line", ["front", "rear"])
        .Add("felt-mass", "mass of the fluid felt at the wheel", "kg", "F0", [line.FrontMass, line.RearMass])
        .Add("felt-resistance", "resistance felt at the wheel", "N s/m", "F0", [line.FrontResistance, line.RearResistance])
        .Add("line-frequency", "natural frequency of the fluid", "Hz", "F2", [line.NaturalFrequency, line.NaturalFrequency])
        .Add("line-damping", "its damping ratio", "–", "F3", [line.DampingRatio, line.DampingRatio])
        .Add("line-corner", "the link stiffens above", "Hz", "F2", [line.CornerFrequency, line.CornerFrequency]);
}
