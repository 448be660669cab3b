using System.Text;

namespace Heaveline.Files.Yaml;

/// <summary>A file to be filled in, from the same shapes that read it: what must be there as lines to complete, all the rest as comments.</summary>
internal static class FileTemplate
{
    /// <summary>What stands where a value must be put.</summary>
    public const string Blank = "fill in";

    private const int MeaningColumn = 40;

    /// <summary>The lines of a group and of all groups in it.</summary>
    /// <param name="file">The group.</param>
    /// <param name="given">Values that are known already, by key of the outermost group.</param>
    /// <param name="needed">Names of keys that may be left out by their shape, but not of what is begun here.</param>
    /// <param name="nameFor">A name for a group of the user's own naming, from the key that holds it.</param>
    public static string Of(Shape file, IReadOnlyDictionary<string, string> given, IReadOnlySet<string> needed, Func<string, string> nameFor)
    {
        var template = new Lines(needed, nameFor);
        foreach (var key in file.Keys)
        {
            template.Write(file, key, new Place(0, null), given.GetValueOrDefault(key.Name));
        }

        return template.Text.ToString();
    }

    // Where lines stand: how far in, from which column on they are a comment, and whether an item of a list begins.
    private readonly record struct Place(int Indent, int? CommentAt, bool Dash = false);

    private sealed class Lines(IReadOnlySet<string> needed, Func<string, string> nameFor)
    {
        private readonly Dictionary<Shape, string> shown = [];

        public StringBuilder Text { get; } = new();

        public void Write(Shape shape, Key key, Place place, string? given = null)
        {
            // Of keys that exclude each other the first is to be filled in, the others stand beside it as comments.
            var isFirst = shape.OneOf.Any(set => set[0] == key);
            var isLive = place.CommentAt is null && (IsNeeded(shape, key) || given is not null);
            var at = isLive || place.CommentAt is not null ? place : place with { CommentAt = place.Indent };
            var others = shape.OneOf.FirstOrDefault(set => set.Contains(key));
            var meaning = others is null ? key.Meaning
                : isFirst ? $"{key.Meaning} Or: {string.Join(", ", others.Skip(1).Select(other => other.Name))}."
                : $"Instead of {others[0].Name}: {char.ToLowerInvariant(key.Meaning[0])}{key.Meaning[1..]}";
            if (key.Kind.Group is not { } group)
            {
                var value = given ?? (isLive ? Blank : key.Example);
                Line(at, $"{key.Name}: {value}", isLive && given is null && key.Example.Length > 0 ? $"{meaning} As: {key.Example}" : meaning);
                return;
            }

            Line(at, $"{key.Name}:", meaning);
            var inside = at with { Indent = at.Indent + 2, Dash = false };
            if (key.Kind.Keys is null && key.Kind.Item is null)
            {
                // Names of the user's choice; under each a group, or a list of groups.
                Line(inside, $"{nameFor(key.Name)}:", "");
                inside = inside with { Indent = inside.Indent + 2 };
            }

            if (!shown.TryAdd(group, key.Name))
            {
                foreach (var live in group.Keys.Where(inner => at.CommentAt is null && IsNeeded(group, inner)))
                {
                    Write(group, live, inside);
                }

                Line(inside with { CommentAt = inside.CommentAt ?? inside.Indent }, $"(all that stands under {shown[group]} may stand here)", "");
                return;
            }

            var isList = key.Kind.Item is not null || key.Kind.Under("")?.Item is not null;
            foreach (var (inner, n) in group.Keys.Select((inner, n) => (inner, n)))
            {
                Write(group, inner, isList ? inside with { Indent = inside.Indent + 2, Dash = n == 0 } : inside);
            }
        }

        private bool IsNeeded(Shape shape, Key key) => key.IsRequired || needed.Contains(key.Name) || shape.OneOf.Any(set => set[0] == key);

        private void Line(Place place, string line, string meaning)
        {
            var indent = place.Dash ? new string(' ', place.Indent - 2) + "- " : new string(' ', place.Indent);
            var full = place.CommentAt is { } mark ? $"{indent[..mark]}# {indent[mark..]}{line}" : indent + line;
            Text.Append(meaning.Length == 0 ? full : $"{full.PadRight(MeaningColumn)} # {meaning}").Append('\n');
        }
    }
}
