using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>Lends this machine to a study that runs at another one.</summary>
internal static class HelpOutCommand
{
    private const int MostThreads = 1024;

    public static Command Of(Streams streams)
    {
        var at = new Argument<string>("HOST:PORT") { Description = "Where the study is found, as it says there." };
        var code = new Argument<string>("CODE") { Description = "Its code, as it says there." };
        var threads = Threads("On how many threads pieces are done here. Without it: one for each processor.");
        var members = PieceWays.Members();
        var command = new Command(
            "help-out",
            """
            Lend this machine to a study that runs at another one and was opened by --help-at. It gets the texts of the study, does pieces of its work
            below normal priority, and leaves when the study has ended or its machine has gone. What is sent is encrypted, and only who has the code
            takes part. Both machines need the same Heaveline, and each must reach the other.

            Examples:
              heaveline help-out 192.168.1.20:5091 ABCD-EFGH-JKMN
            """)
        {
            at,
            code,
            threads,
            members,
        };
        command.SetAction((r, stop) => Helping.Out(
            streams, new HelpOutAsked(r.GetValue(at)!, r.GetValue(code)!, r.GetValue(threads), r.GetValue(members)), stop));
        return command;
    }

    /// <summary>On how many threads a machine helps.</summary>
    /// <param name="says">What the help says of it.</param>
    public static Option<int?> Threads(string says) =>
        new("--threads") { Description = says, HelpName = "NUMBER", CustomParser = Count };

    private static int? Count(ArgumentResult result)
    {
        var word = result.Tokens[0].Value;
        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= MostThreads)
        {
            return count;
        }

        result.AddError($"--threads {word}: give a whole number from 1 to {MostThreads}.");
        return null;
    }
}
