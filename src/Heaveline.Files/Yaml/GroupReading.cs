using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>Reads the keys of one group: every value, and every key that is unknown, missing or one too many.</summary>
internal static class GroupReading
{
    /// <summary>The sound values by key.</summary>
    public static Dictionary<Key, object> Values(Node node, Shape shape, Reader reader)
    {
        var values = new Dictionary<Key, object>();
        var cut = node.Entries.Zip(node.Entries.Skip(1))
            .Where(pair => pair.Second.Value.IsEmpty && char.IsAsciiDigit(pair.Second.Key.FirstOrDefault()))
            .Select(pair => (pair.First, pair.Second, Number: CutNumber.Of(pair.First.Value, reader)))
            .Where(pair => pair.Number is not null)
            .ToList();
        foreach (var (first, _, number) in cut)
        {
            CutNumber.Refuse(first.Value, number!, reader);
        }

        foreach (var entry in node.Entries.Where(entry => !cut.Any(pair => entry == pair.First || entry == pair.Second)))
        {
            if (shape.Keys.FirstOrDefault(key => key.Name == entry.Key) is not { } key)
            {
                Unknown(node, shape, reader, entry);
            }
            else if (key.Kind.TryReadAny(entry.Value, reader, out var value))
            {
                values[key] = value;
                key.TellsUnusual?.Invoke(entry.Value, value, reader);
            }
        }

        foreach (var key in shape.Keys.Where(key => key.IsRequired && node.At(key.Name) is null))
        {
            reader.Refuse(node.Place, $"{node.Subject} has no {key.Name}.", $"Add {Example(key)}");
        }

        foreach (var set in shape.OneOf)
        {
            Count(node, reader, set);
        }

        return values;
    }

    private static void Unknown(Node node, Shape shape, Reader reader, Entry entry)
    {
        var near = shape.Keys.FirstOrDefault(key => key.OtherWords.Contains(entry.Key, StringComparer.OrdinalIgnoreCase))?.Name
            ?? NearestWord.Of(entry.Key, shape.Keys.Select(key => key.Name));
        var known = $"Known here: {string.Join(", ", shape.Keys.Select(key => key.Name))}.";
        reader.Refuse(entry.KeyPlace, $"\"{entry.Key}\" is not a key of {node.Subject}.", near is null ? known : $"Did you mean {near}? {known}");
    }

    private static void Count(Node node, Reader reader, IReadOnlyList<Key> set)
    {
        var given = set.Where(key => node.At(key.Name) is not null).ToList();
        var names = string.Join(", ", set.Select(key => key.Name));
        if (given.Count == 0)
        {
            reader.Refuse(node.Place, $"{node.Subject} has none of {names}; it must have one.", $"Add {Example(set[0])}");
        }

        foreach (var key in given.Skip(1))
        {
            var place = node.Entries.First(entry => entry.Key == key.Name).KeyPlace;
            reader.Refuse(
                place, $"{node.Subject} has {given[0].Name} and {key.Name}; it must have one of {names}.", "Keep the one that was measured.");
        }
    }

    private static string Example(Key key) => key.Example.Length > 0
        ? $"{key.Name}: {key.Example} ({key.Meaning.TrimEnd('.')})."
        : $"{key.Name}, {key.Kind.Words} ({key.Meaning.TrimEnd('.')}).";
}
