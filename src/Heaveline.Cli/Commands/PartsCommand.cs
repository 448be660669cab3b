using System.CommandLine;
using Heaveline.Cars;
using Heaveline.Cli.Output;
using Heaveline.Files.Cars;
using Heaveline.Files.Parts;

namespace Heaveline.Cli.Commands;

/// <summary>Lists of parts: what is in one, what is odd in it, what of it fits a car.</summary>
internal static class PartsCommand
{
    public static Command Of(Streams streams) => new(
        "parts",
        """
        Lists of parts that can be bought: what is in one, what is odd in it, and what of it fits a car.

        Example:
          heaveline parts check examples/parts/village-autumn.yaml --car examples/garage/fern-saloon-measured.yaml
        """)
    {
        Check(streams),
    };

    private static Command Check(Streams streams)
    {
        var file = new Argument<string>("FILE") { Description = "A list of parts (.yaml), or a sheet of springs (.csv)." };
        var car = new Option<string?>("--car")
        {
            Description = "The car that the parts are for: what fits is told place by place.", HelpName = "CAR",
        };
        var json = Options.Json();
        var command = new Command(
            "check",
            """
            Read a list of parts, say what is in it and what is likely a slip; with --car what fits where, what packing it needs, and why the rest
            does not fit.

            Examples:
              heaveline parts check examples/parts/village-autumn.yaml
              heaveline parts check examples/parts/shed.csv --car examples/garage/fern-saloon-measured.yaml
            """)
        {
            file,
            car,
            json,
        };
        command.SetAction(r => Run(streams, r.GetValue(file)!, r.GetValue(car), r.GetValue(json)));
        return command;
    }

    private static int Run(Streams streams, string file, string? carFile, bool json)
    {
        var list = PartsFile.Load(file);
        Say(streams, list.Format());
        Car? car = null;
        if (carFile is not null)
        {
            var reading = CarFile.Load(carFile);
            Say(streams, reading.Format());
            car = reading.Value;
        }

        if (list.Value is not { } parts || (carFile is not null && car is null))
        {
            throw new Stopped($"heaveline: {(list.Value is null ? file : carFile)} is refused: see above.", ExitCode.Refused);
        }

        var answer = new PartsAnswer { List = parts, Car = car, Slips = [.. list.Warnings.Select(warning => warning.Message)] };
        if (json)
        {
            streams.Results.WriteLine(answer.Json(Release.Version, "parts"));
            return ExitCode.Done;
        }

        foreach (var line in answer.Lines)
        {
            streams.Results.WriteLine(line);
        }

        return ExitCode.Done;
    }

    private static void Say(Streams streams, string words)
    {
        if (words.Length > 0)
        {
            streams.Remarks.WriteLine(words);
        }
    }
}
