using System.Text.RegularExpressions;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>
/// What of a car nobody has measured on it, told at the end of each line: <c># from Fern saloon, not measured</c> of a car that was begun from
/// another, <c># estimated: usual for a car</c> of one begun on a garage sheet. A comment and no
/// key: any editor shows it and takes it out, and no answer changes by it. Doubts are left as they stand, since nobody knows how far one car's number
/// holds for another; the words say that it was not measured.
/// </summary>
public static partial class UnmeasuredLines
{
    private const int LongestName = 60;
    private const string Guess = " # estimated: ";

    /// <summary>Keys that are the new car's own, or say nothing that could be measured.</summary>
    private static readonly HashSet<string> Own = new(StringComparer.Ordinal) { "car", "note" };

    /// <summary>A car's text with every value marked as another car's, one value a line where that can be; its first comments are left out.</summary>
    /// <param name="text">The text of a car file, sound as YAML.</param>
    /// <param name="from">The other car's name.</param>
    /// <returns>The text, which says what it said before; the same one where it cannot be read.</returns>
    public static string Mark(string text, string from)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(from);
        return WithOwnEnds(text, feeds => Marked(feeds, from));
    }

    private static string Marked(string text, string from)
    {
        if (Root(text) is not { } root)
        {
            return text;
        }

        var wide = Widened(text, root);
        if (Root(wide) is not { } same || !same.IsSameAs(root, inOrder: true))
        {
            (wide, same) = (text, root);
        }

        var name = string.Join(' ', from.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        name = name.Length > LongestName ? name[..LongestName].TrimEnd() : name;
        var lines = Lines(wide);
        foreach (var line in same.Entries.Where(entry => !Own.Contains(entry.Key)).SelectMany(entry => Of(entry.Value)).Distinct())
        {
            var (value, comment) = Parted(lines[line - 1], same, line);
            lines[line - 1] = $"{value} # from {name}, not measured{(comment.Length > 0 ? $" ({comment})" : "")}";
        }

        var marked = string.Join('\n', lines.SkipWhile(line => line.StartsWith('#') || line.Trim().Length == 0));
        return Root(marked) is { } read && read.IsSameAs(root, inOrder: true) ? marked : text;
    }

    /// <summary>What stands behind a value that was estimated.</summary>
    /// <param name="by">By which rule, in one line.</param>
    public static string Estimated(string by) => Guess + by;

    /// <summary>The lines that are marked, counted from 1, each with its mark's words.</summary>
    /// <param name="text">The text of a car file.</param>
    public static IReadOnlyDictionary<int, string> In(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Contains(", not measured", StringComparison.Ordinal) || text.Contains(Guess, StringComparison.Ordinal)
            ? Lines(text).Select((line, n) => (Line: n + 1, Mark: Comment().Match(line))).Where(one => one.Mark.Success)
                .ToDictionary(one => one.Line, one => one.Mark.Groups["words"].Value)
            : new Dictionary<int, string>();
    }

    /// <summary>The text with the marks of some lines taken out; a comment that stood there before is one again.</summary>
    /// <param name="text">The text of a car file.</param>
    /// <param name="confirmed">The lines, counted from 1.</param>
    public static string Confirm(string text, IEnumerable<int> confirmed)
    {
        ArgumentNullException.ThrowIfNull(text);
        return WithOwnEnds(text, feeds => Confirmed(feeds, confirmed));
    }

    private static string Confirmed(string text, IEnumerable<int> confirmed)
    {
        var lines = Lines(text);
        foreach (var line in confirmed.Where(line => line >= 1 && line <= lines.Length))
        {
            lines[line - 1] = Comment().Replace(lines[line - 1], mark => mark.Groups["rest"] is { Success: true } rest ? $" # {rest.Value}" : "");
        }

        return string.Join('\n', lines);
    }

    /// <summary>The lines on which the values of a part of a text stand.</summary>
    public static IEnumerable<int> Of(Node node)
    {
        ArgumentNullException.ThrowIfNull(node);
        return node.Kind == NodeKind.Scalar
            ? [node.Place.Line]
            : node.Entries.Select(entry => entry.Value).Concat(node.Items).SelectMany(Of).Distinct();
    }

    private static Node? Root(string text) => YamlReading.Value(new SourceText("car.yaml", text)).Value;

    private static string WithOwnEnds(string text, Func<string, string> change) => text.Contains("\r\n", StringComparison.Ordinal)
        ? change(text.ReplaceLineEndings("\n")).ReplaceLineEndings("\r\n")
        : change(text);

    private static string[] Lines(string text) => text.Split('\n');

    // Groups in one line, {front: 742 kg, rear: 618 kg}, get a line for each value, so that each can lose its mark alone.
    private static string Widened(string text, Node root)
    {
        var lines = Lines(text);
        foreach (var (key, node) in Groups(root).Where(one => !Own.Contains(one.Key.Key)))
        {
            var at = key.KeyPlace.Line - 1;
            var written = Braces().Match(lines[at]);
            if (written.Success && node.Entries.All(entry => entry.Value.Kind == NodeKind.Scalar && entry.Value.Place.Line == at + 1)
                && node.Entries.Count > 0 && Groups(root).Count(one => one.Key.KeyPlace.Line == at + 1) == 1)
            {
                var indent = written.Groups["indent"].Value;
                var source = lines[at];
                var values = node.Entries.Select(entry =>
                    $"{indent}  {Cut(source, entry.KeyPlace)}: {Cut(source, entry.Value.Place)}");
                var comment = written.Groups["comment"].Value;
                lines[at] = $"{indent}{written.Groups["key"].Value}:{(comment.Length > 0 ? " " + comment : "")}\n{string.Join('\n', values)}";
            }
        }

        return string.Join('\n', lines);
    }

    private static IEnumerable<(Entry Key, Node Node)> Groups(Node node) => node.Entries.SelectMany(entry =>
        entry.Value.Kind == NodeKind.Mapping ? Groups(entry.Value).Prepend((entry, entry.Value)) : []);

    private static string Cut(string line, Place place) => line.Substring(place.Column - 1, Math.Min(place.Length, line.Length - place.Column + 1));

    // The line without its comment, and the comment's words. A # within a value ends before the value does.
    private static (string Value, string Comment) Parted(string line, Node root, int number)
    {
        var end = Scalars(root).Where(scalar => scalar.Place.Line == number).Max(scalar => scalar.Place.Column - 1 + scalar.Place.Length);
        var mark = end < line.Length ? line.IndexOf(" #", end, StringComparison.Ordinal) : -1;
        return mark < 0 ? (line.TrimEnd(), "") : (line[..mark].TrimEnd(), line[(mark + 2)..].Trim());
    }

    private static IEnumerable<Node> Scalars(Node node) =>
        node.Kind == NodeKind.Scalar ? [node] : node.Entries.Select(entry => entry.Value).Concat(node.Items).SelectMany(Scalars);

    [GeneratedRegex(@"\s+# (?:(?<words>from .+?, not measured)(?: \((?<rest>.*)\))?|(?<words>estimated: .+?))\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Comment();

    [GeneratedRegex(@"^(?<indent> *)(?<key>[^\s:{}\[\]""'#-][^:{}\[\]""'#]*): *\{.*\} *(?<comment>#.*)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Braces();
}
