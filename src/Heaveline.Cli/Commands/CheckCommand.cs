using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Files.Cars;

namespace Heaveline.Cli.Commands;

/// <summary>Reads car files and says all that is wrong or doubtful in them.</summary>
internal static class CheckCommand
{
    public static Command Of(Streams streams)
    {
        var files = new Argument<string[]>("FILE") { Description = "Car files or variants.", Arity = ArgumentArity.OneOrMore };
        var json = Options.Json();
        var command = new Command(
            "check",
            """
            Read car files and say all that is wrong or doubtful in them, each with its line.

            Example:
              heaveline check examples/garage/*.yaml
            """)
        {
            files,
            json,
        };
        command.SetAction(r => Run(streams, r.GetValue(files)!, r.GetValue(json)));
        return command;
    }

    private static int Run(Streams streams, string[] files, bool json)
    {
        var refused = 0;
        var remarks = new System.Text.Json.Nodes.JsonArray();
        foreach (var file in files)
        {
            var reading = CarFile.Load(file);
            refused += reading.Refusals.Count;
            foreach (var (kind, place, line, column, message, advice) in reading.Refusals
                .Select(r => ("refused", r.File, r.Line, r.Column, r.Message, r.Advice))
                .Concat(reading.Warnings.Select(w => ("warning", w.File, w.Line, w.Column, w.Message, w.Advice))))
            {
                remarks.Add((System.Text.Json.Nodes.JsonNode)new System.Text.Json.Nodes.JsonObject
                {
                    ["kind"] = kind, ["file"] = place, ["line"] = line, ["column"] = column, ["message"] = message, ["advice"] = advice,
                });
            }

            if (!json)
            {
                if (reading.Refusals.Count + reading.Warnings.Count > 0)
                {
                    streams.Remarks.WriteLine(reading.Format());
                }

                streams.Results.WriteLine(
                    reading.Refusals.Count > 0 ? $"{file}: {reading.Refusals.Count} refused, {reading.Warnings.Count} doubtful"
                    : reading.Warnings.Count > 0 ? $"{file}: can be used, {reading.Warnings.Count} doubtful"
                    : $"{file}: in order");
            }
        }

        if (json)
        {
            streams.Results.WriteLine(FactJson.Of("check", [], new System.Text.Json.Nodes.JsonObject { ["remarks"] = remarks }));
        }

        return refused > 0 ? ExitCode.Refused : ExitCode.Done;
    }
}
