using System.Text;

namespace Heaveline.Files.Yaml;

/// <summary>The keys of a file as a page for readers, from the same shapes that read it.</summary>
internal static class KeyPage
{
    /// <summary>A page in Markdown: a table for each group, the whole files first.</summary>
    public static string Of(params Shape[] files)
    {
        var text = new StringBuilder();
        var waiting = new Queue<Shape>(files);
        var seen = new HashSet<Shape>(files);
        while (waiting.TryDequeue(out var shape))
        {
            text.Append("## ").Append(char.ToUpperInvariant(shape.Name[0])).Append(shape.Name.AsSpan(1)).Append("\n\n")
                .Append(shape.Meaning).Append("\n\n");
            var isRanged = shape.Keys.Any(key => key.UsualWords is not null);
            text.Append(isRanged
                ? "| key | must be there | meaning | usual (common practice, no source) | example |\n|---|---|---|---|---|\n"
                : "| key | must be there | meaning | example |\n|---|---|---|---|\n");
            foreach (var key in shape.Keys)
            {
                text.Append("| `").Append(key.Name).Append("` | ").Append(Must(shape, key))
                    .Append(" | ").Append(Cell(key.Meaning))
                    .Append(isRanged ? $" | {key.UsualWords}" : "").Append(" | ").Append(Example(key)).Append(" |\n");
                if (key.Kind.Group is { } group && seen.Add(group))
                {
                    waiting.Enqueue(group);
                }
            }

            text.Append('\n');
        }

        return text.ToString().TrimEnd() + "\n";
    }

    private static string Must(Shape shape, Key key)
    {
        var set = shape.OneOf.FirstOrDefault(keys => keys.Contains(key));
        return key.IsRequired ? "yes" : set is null ? "" : $"one of {string.Join(", ", set.Select(one => one.Name))}";
    }

    private static string Example(Key key) =>
        (key.Kind.Group is { } group ? $"keys of [{group.Name}](#{group.Name.Replace(' ', '-')})" : "")
        + (key.Example.Length == 0 ? "" : key.Kind.Group is null ? $"`{Cell(key.Example)}`" : $": `{Cell(key.Example)}`");

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
