using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Heaveline.Files.Yaml;

/// <summary>
/// One YAML document as nodes with places, from the parser's events. Of YAML 1.2 it takes groups, lists and scalars; anchors, aliases, tags, merge
/// keys, keys that are not plain words and more than one document are refused, for a file that a person should be able to read from top to bottom.
/// </summary>
internal sealed class YamlTree
{
    /// <summary>Deepest nesting of groups and lists.</summary>
    public const int Deepest = 16;

    /// <summary>Longest text in characters.</summary>
    public const int Longest = FileFormat.LongestText;

    /// <summary>Most groups, lists, keys and values together.</summary>
    public const int Most = 20_000;

    /// <summary>
    /// Longest key in characters. Every value carries the keys that lead to it, so that one long key would be kept thousands of times.
    /// </summary>
    public const int LongestKey = 100;

    private readonly Reader reader;
    private readonly PlacedParser parser;
    private int nodes;

    private YamlTree(Reader reader)
    {
        this.reader = reader;
        parser = new PlacedParser(reader.Source.Text);
    }

    /// <summary>The document's root, or null with one refusal when the text is not one YAML document.</summary>
    public static Node? Of(Reader reader)
    {
        if (reader.Source.Text.Length > Longest)
        {
            reader.Refuse(
                Place.Start,
                $"the text has {reader.Source.Text.Length} characters; it must have {Longest} or fewer.",
                "Put measured data into files of their own.");
            return null;
        }

        if (reader.Source.FirstStrange() is var (place, code))
        {
            reader.Refuse(place, $"a character that text files do not hold stands here, U+{code:X4}.", "Delete it, or save the file as plain text.");
            return null;
        }

        try
        {
            return new YamlTree(reader).Document();
        }
        catch (YamlException e)
        {
            SyntaxWords.Refuse(reader, e);
            return null;
        }
        catch (BeyondLimitException e)
        {
            reader.Refuse(e.Place, e.Message, e.Advice);
            return null;
        }
    }

    private Node? Document()
    {
        parser.Consume<StreamStart>();
        if (parser.TryConsume<StreamEnd>(out _))
        {
            reader.Refuse(Place.Start, "the file is empty.", "Write the keys of the file, or start from an example.");
            return null;
        }

        parser.Consume<DocumentStart>();
        var root = Value("", null, 0);
        parser.Consume<DocumentEnd>();
        if (parser.TryConsume<DocumentStart>(out var second))
        {
            reader.Refuse(
                At(second.Start, (int)(second.End.Column - second.Start.Column)), "a second document begins here.", "Keep one document in a file.");
            return null;
        }

        return root;
    }

    private Node Value(string path, Place? key, int depth)
    {
        if (parser.TryConsume<AnchorAlias>(out var alias))
        {
            return Refused(alias, path, "an alias (*) is not taken here.", "Write the value again.");
        }

        var start = parser.Require<NodeEvent>();
        if (++nodes > Most)
        {
            throw new BeyondLimitException(
                At(start.Start, 1), $"the file has more than {Most} keys and values.", "Put measured data into files of their own.");
        }

        var node = start switch
        {
            Scalar => OfScalar(parser.Consume<Scalar>(), path, key),
            MappingStart => Mapping(path, key, depth),
            _ => Sequence(path, key, depth),
        };
        if (!start.Anchor.IsEmpty)
        {
            return Refused(start, path, "an anchor (&) is not taken here.", "Leave the anchor out and write the values where they belong.");
        }

        return start.Tag.IsEmpty ? node : Refused(start, path, "a tag (!) is not taken here.", "Leave the tag out; the key says what the value is.");
    }

    private Node Refused(ParsingEvent at, string path, string message, string advice)
    {
        var line = reader.Source.Line((int)at.Start.Line);
        var from = Math.Min((int)at.Start.Column - 1, line.Length);
        var length = line.AsSpan(from).IndexOfAny(' ', ',', ']') is >= 0 and var end ? end : line.Length - from;
        var place = At(at.Start, Math.Max(1, length));
        reader.Refuse(place, message, advice);
        return new Node(NodeKind.Refused, path, place);
    }

    private Node OfScalar(Scalar scalar, string path, Place? key)
    {
        var plain = scalar.Style == ScalarStyle.Plain;
        if (plain && scalar.Value.Length == 0)
        {
            return new Node(NodeKind.Scalar, path, key ?? At(scalar.Start, 1)) { IsPlain = true };
        }

        // A text over several lines is marked to the end of its first one.
        var line = reader.Source.Line((int)scalar.Start.Line);
        var from = Math.Min((int)scalar.Start.Column - 1, line.Length);
        var end = scalar.End.Line == scalar.Start.Line ? Math.Min((int)scalar.End.Column - 1, line.Length) : line.TrimEnd().Length;
        var written = line[from..Math.Max(from, end)].TrimEnd();
        var inside = written.IndexOf(scalar.Value, StringComparison.Ordinal);
        return new Node(NodeKind.Scalar, path, At(scalar.Start, Math.Max(1, written.Length)))
        {
            Text = scalar.Value,
            IsPlain = plain,
            TextColumn = inside < 0 ? 0 : (int)scalar.Start.Column + inside,
        };
    }

    private Node Mapping(string path, Place? key, int depth)
    {
        var start = parser.Consume<MappingStart>();
        var place = key ?? At(start.Start, 1);
        Descend(depth, place);
        var entries = new List<Entry>();
        var places = new Dictionary<string, Place>(StringComparer.Ordinal);
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var name = Value("", null, depth + 1);
            if (name.Text.Length > LongestKey)
            {
                throw new BeyondLimitException(
                    name.Place,
                    $"a key has {name.Text.Length} characters; it must have {LongestKey} or fewer.",
                    "Give it a short name, and write the rest as a note.");
            }

            if (name.Kind != NodeKind.Scalar)
            {
                if (name.Kind != NodeKind.Refused)
                {
                    reader.Refuse(name.Place, "a key must be a word or some words.", "Write the key as plain text, then a colon.");
                }

                Value("", null, depth + 1);
                continue;
            }

            var value = Value($"{path} {name.Text.Replace('-', ' ').Replace('_', ' ')}".TrimStart(), name.Place, depth + 1);
            var subject = path.Length == 0 ? "the file" : path;
            if (name.Text == "<<" && name.IsPlain)
            {
                reader.Refuse(name.Place, "a merge key (<<) is not taken here.", "Write the keys out.");
            }
            else if (!places.TryAdd(name.Text, name.Place))
            {
                reader.Refuse(
                    name.Place, $"{subject} has \"{name.Text}\" twice; it stands on line {places[name.Text].Line} already.", "Keep one of the two.");
            }
            else
            {
                entries.Add(new Entry(name.Text, name.Place, value));
            }
        }

        var marked = key ?? (entries.Count > 0 ? entries[0].KeyPlace : place);
        return new Node(NodeKind.Mapping, path, marked) { Entries = entries };
    }

    private Node Sequence(string path, Place? key, int depth)
    {
        var start = parser.Consume<SequenceStart>();
        var place = key ?? At(start.Start, 1);
        Descend(depth, place);
        var items = new List<Node>();
        while (!parser.TryConsume<SequenceEnd>(out _))
        {
            items.Add(Value($"{path} item {items.Count + 1}".TrimStart(), null, depth + 1));
        }

        return new Node(NodeKind.Sequence, path, place) { Items = items };
    }

    private static void Descend(int depth, Place place)
    {
        if (depth >= Deepest)
        {
            throw new BeyondLimitException(place, $"groups and lists are nested more than {Deepest} deep.", "Write the file flatter.");
        }
    }

    private static Place At(Mark mark, int length) => new(Math.Max(1, (int)mark.Line), Math.Max(1, (int)mark.Column), Math.Max(1, length));

    // Ends the walk from any depth; never leaves this class.
    private sealed class BeyondLimitException(Place place, string message, string advice) : Exception(message)
    {
        public Place Place { get; } = place;

        public string Advice { get; } = advice;
    }
}
