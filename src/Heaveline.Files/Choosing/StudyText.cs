using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Studies;

namespace Heaveline.Files.Choosing;

/// <summary>A study as the text of its file: reading it gives the same lines.</summary>
public static class StudyText
{
    /// <summary>The text.</summary>
    /// <param name="sheet">The study; its files named as seen from its own.</param>
    public static string Of(ChooseSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var text = new ValueText("\n", 2, 2);
        (Key Key, Node? Value)[] lines =
        [
            (StudyWords.Name, Node.Scalar(sheet.Name)),
            (StudyWords.Note, sheet.Note.Length == 0 ? null : Node.Scalar(sheet.Note)),
            .. Asked(sheet).Select(line => (line.Key, line.Value)),
        ];
        return string.Concat(lines.Where(line => line.Value is not null).Select(line => text.Entry(line.Key.Name, line.Value!, 0) + "\n"));
    }

    /// <summary>The text of a study's file with some of its lines asking otherwise; all else in it stays, remarks too.</summary>
    /// <param name="text">The text.</param>
    /// <param name="sheet">The study as it is to be; its files named as seen from its own.</param>
    /// <param name="choices">The names of the choices whose lines ask otherwise.</param>
    public static EditOutcome Edited(string text, ChooseSheet sheet, IReadOnlyCollection<string> choices)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(sheet);
        var root = YamlReading.Value(new SourceText("", text)).Root;
        return YamlEditing.Apply(
            text,
            _ => StudyWords.Shape,
            Asked(sheet).Where(line => choices.Contains(line.Choice) && (line.Value is not null || root?.At(line.Key.Name) is not null))
                .Select(line => line.Value is { } value ? KeyEdit.Put([line.Key.Name], value) : KeyEdit.Remove([line.Key.Name])));
    }

    // What is asked, in the order of the file.
    private static (string Choice, Key Key, Node? Value)[] Asked(ChooseSheet sheet)
    {
        Node[] Each(string choice) => [.. Words(sheet, choice).Select(Node.Scalar)];
        return
        [
            ("car", StudyWords.Car, Each("car").FirstOrDefault()),
            ("parts", StudyWords.Parts, List(Each("parts"))),
            ("open", StudyWords.Open, Group(Words(sheet, "open").Select(Opened))),
            ("keep", StudyWords.Keep, List(Each("keep"))),
            ("use", StudyWords.Use, List([.. Words(sheet, "use").Select(Used)])),
            ("load", StudyWords.Loads, List(Each("load"))),
            ("wish", StudyWords.Wishes, List(Each("wish"))),
            ("with", StudyWords.Limits, List(Each("with"))),
            ("budget", StudyWords.Budget, Each("budget").FirstOrDefault()),
            ("draws", StudyWords.Draws, Each("draws").FirstOrDefault()),
            ("seed", StudyWords.Seed, Each("seed").FirstOrDefault()),
        ];
    }

    private static IEnumerable<string> Words(ChooseSheet sheet, string choice) =>
        sheet.Lines.Where(line => line.Choice == choice).Select(line => line.Words);

    private static Node? List(Node[] items) => items.Length == 0 ? null : Node.List(items);

    private static Node? Group(IEnumerable<KeyValuePair<string, Node>> entries) =>
        entries.ToArray() is { Length: > 0 } all ? Node.Group(all) : null;

    private static KeyValuePair<string, Node> Opened(string words)
    {
        var colon = words.IndexOf(':', StringComparison.Ordinal);
        var (place, what) = colon < 0 ? (words, "any") : (words[..colon], words[(colon + 1)..].Trim());
        return KeyValuePair.Create(place.Trim().Replace(' ', '-'), Node.Scalar(what));
    }

    private static Node Used(string words)
    {
        var line = ChooseUseLine.Read(words) ?? new ChooseUseLine(words, []);
        (Key Key, Node? Value)[] entries =
        [
            line.Letter is { } letter ? (StudyUseWords.Class, Node.Scalar(letter)) : (StudyUseWords.Road, Node.Scalar(line.Name)),
            (StudyUseWords.Speeds, List([.. line.Speeds.Select(Node.Scalar)])),
            (StudyUseWords.Loads, List([.. line.Loads.Select(Node.Scalar)])),
            (StudyUseWords.Weight, line.Weight is { } weight ? Node.Scalar(weight) : null),
        ];
        return Node.Group(entries.Where(entry => entry.Value is not null).Select(entry => KeyValuePair.Create(entry.Key.Name, entry.Value!)));
    }
}
