using System.Text;
using System.Text.RegularExpressions;

namespace Heaveline.Web.Serving;

/// <summary>
/// The pages' own scripts and sheets as one text, for a file that stands by itself: each module in a function of its own, what it needs before it.
/// </summary>
internal static partial class ScriptBundle
{
    /// <summary>A module with all that it imports, as one script without imports.</summary>
    /// <param name="module">Its file name.</param>
    public static string Of(string module)
    {
        var (written, text) = (new HashSet<string>(StringComparer.Ordinal), new StringBuilder());
        Add(module, written, text);
        return text.ToString();
    }

    /// <summary>A sheet without what is written for those who work on it.</summary>
    /// <param name="name">Its file name.</param>
    public static string Sheet(string name) => Room().Replace(Blank().Replace(Remark().Replace(Text(name), ""), "\n").Trim(), "$1");

    /// <summary>The text of a file that the pages load.</summary>
    public static string Text(string name)
    {
        using var stream = typeof(ScriptBundle).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The pages' own {name} is not carried along.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static void Add(string module, HashSet<string> written, StringBuilder text)
    {
        if (!written.Add(module))
        {
            return;
        }

        var source = Text(module);
        foreach (Match import in Import().Matches(source))
        {
            Add(import.Groups["from"].Value, written, text);
        }

        string[] names = [.. Export().Matches(source).Select(match => match.Groups["name"].Value)];
        source = Import().Replace(source, match => $"const {{{match.Groups["names"].Value.Replace(" as ", ": ", StringComparison.Ordinal)}}} = "
            + $"{Name(match.Groups["from"].Value)};");
        source = Export().Replace(source, match => match.Value["export ".Length..]);
        // Of what is written for readers of the sources nothing is carried along.
        var lines = source.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0 && !line.StartsWith("//", StringComparison.Ordinal)
            && !line.StartsWith("/**", StringComparison.Ordinal));
        text.Append("const ").Append(Name(module)).Append(" = (() => {\n").AppendJoin('\n', lines)
            .Append("\nreturn { ").AppendJoin(", ", names).Append(" };\n})();\n");
    }

    private static string Name(string module) => "from" + char.ToUpperInvariant(module[0]) + module[1..^".js".Length];

    [GeneratedRegex("""^import \{(?<names>[^}]+)\} from "\./(?<from>[a-z]+\.js)";""", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex Import();

    [GeneratedRegex("^export (async )?(class|function|const) (?<name>[A-Za-z]+)", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex Export();

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline | RegexOptions.CultureInvariant)]
    private static partial Regex Remark();

    // A blank before a colon or between two selectors says something; one beside these does not.
    [GeneratedRegex(@"\s*([{};,])\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Room();

    [GeneratedRegex(@"\s*\n\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Blank();
}
