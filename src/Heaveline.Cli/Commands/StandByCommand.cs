using System.CommandLine;
using System.CommandLine.Parsing;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>Lends this machine to whatever study a machine of its crew begins.</summary>
internal static class StandByCommand
{
    // As long as others show it.
    private const int LongestName = 64;

    public static Command Of(Streams streams)
    {
        var file = new Argument<string>("FILE") { Description = "The file of the crew (docs/crew-file.md), the same at every machine of it." };
        var threads = HelpOutCommand.Threads("On how many threads pieces of a study are done here. Without it: as the file says.");
        var name = new Option<string?>("--name")
        {
            Description = "What this machine is called. Without it: as the network calls it. A study that was begun at a machine of this name is "
                + "left to that machine.",
            HelpName = "NAME",
            CustomParser = NameOf,
        };
        var makes = new Option<bool>("--new-code") { Description = "Make the file of the crew's code, which every machine gets a copy of, and end." };
        var command = new Command(
            "stand-by",
            """
            Lend this machine to its crew: it waits, and helps with every study that a machine begins with --crew and the same file, with several at
            once. Machines and studies are noted in a database that the file names, Redis or PostgreSQL; what is worked out goes from machine to
            machine, encrypted, and only who has the crew's code takes part. All need the same Heaveline, and each must reach the others.

            Examples:
              heaveline stand-by suspension-lab.yaml --new-code
              heaveline stand-by suspension-lab.yaml
              heaveline choose examples/garage/fern-saloon.yaml --parts examples/parts/village-autumn.yaml --crew suspension-lab.yaml
            """)
        {
            file,
            threads,
            name,
            makes,
        };
        command.SetAction((r, stop) => Helping.StandBy(
            streams, new StandByOptions(r.GetValue(file)!, r.GetValue(threads), r.GetValue(name), r.GetValue(makes)), stop));
        return command;
    }

    private static string? NameOf(ArgumentResult result)
    {
        var word = result.Tokens[0].Value;
        if (!string.IsNullOrWhiteSpace(word) && word.Length <= LongestName)
        {
            return word;
        }

        result.AddError($"--name: give a name of 1 to {LongestName} signs.");
        return null;
    }
}
