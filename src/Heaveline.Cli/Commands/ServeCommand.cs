using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>The pages, in a browser.</summary>
internal static class ServeCommand
{
    public static Command Of(Streams streams)
    {
        var garage = new Argument<string?>("GARAGE")
        {
            Description = "The folder of car files and roads, which may be empty. Without it: the demo garage, or "
                + "where that is not beside the program the "
                + $"folder {OwnGarage.Name} here, made if need be.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var port = new Option<int>("--port")
        {
            Description = "Port to listen at; 0 takes any free one.",
            HelpName = "PORT",
            DefaultValueFactory = _ => 5090,
            CustomParser = PortOf,
        };
        var open = new Option<string?>("--open-to")
        {
            Description = "Also answer other machines, at this address of this one (0.0.0.0: all of them). Readers must type a code that is printed "
                + "here. Encrypted with a certificate made for this run, whose fingerprint is printed too.",
            HelpName = "ADDRESS",
        };
        var encrypted = new Option<bool>("--tls")
        {
            Description = "Encrypt the pages on this machine alone too, as for --open-to.",
        };
        var units = new Option<string?>($"--{Choices.Units.Name}")
        {
            Description = "Units that the pages are read in, metric or imperial; the garage remembers them. They are chosen on its first page too.",
            HelpName = Choices.Units.HelpName,
        };
        var command = new Command(
            "serve",
            """
            Show the pages in a browser on this machine: the car, the pass, the rule, the road, the report. Stop it with Ctrl+C.

            Examples:
              heaveline serve
              heaveline serve my-garage --port 8080
            """)
        {
            garage,
            port,
            open,
            encrypted,
            units,
        };
        command.SetAction((r, stop) => Serving.Run(
            streams,
            new ServeAsked(r.GetValue(garage), r.GetValue(units), r.GetValue(port), r.GetValue(open), r.GetValue(encrypted)),
            stop));
        return command;
    }

    private static int PortOf(ArgumentResult result)
    {
        var words = result.Tokens[0].Value;
        if (int.TryParse(words, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port <= 65535)
        {
            return port;
        }

        result.AddError($"--port '{words}': a port is a whole number between 0 and 65535.");
        return 0;
    }
}
