using System.Text.RegularExpressions;
using Heaveline.Cli;
using Heaveline.Cli.Output;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>What one command line said and how it ended, run inside the test as from the checkout's root.</summary>
internal sealed record Spoken(int Code, string Results, string Remarks)
{
    /// <summary>Runs the command line; arguments that begin with examples/ or docs/ lie in the checkout.</summary>
    public static Spoken Of(params string[] args)
    {
        using var results = new StringWriter();
        using var remarks = new StringWriter();
        var code = Program.Run([.. args.Select(InCheckout)], new Streams(results, remarks, interactive: false));
        return new Spoken(code, AsFromRoot(results), AsFromRoot(remarks));
    }

    /// <summary>The same, for a command line as one would type it.</summary>
    public static Spoken Typed(string line) => Of([.. Words(line)]);

    /// <summary>Words of a command line; double quotes hold blanks together.</summary>
    public static IEnumerable<string> Words(string line) =>
        Regex.Matches(line, "\"([^\"]*)\"|(\\S+)").Select(m => m.Groups[1].Success ? m.Groups[1].Value : m.Groups[2].Value);

    private static string InCheckout(string argument) =>
        argument.StartsWith("examples/", StringComparison.Ordinal) || argument.StartsWith("docs/", StringComparison.Ordinal)
            ? Path.Combine(Checkout.Root, argument.Replace('/', Path.DirectorySeparatorChar))
            : argument;

    private static string AsFromRoot(StringWriter text) =>
        text.ToString().ReplaceLineEndings("\n").Replace(Checkout.Root + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);
}
