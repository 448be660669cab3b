using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Files.Choosing;

/// <summary>Refuses what a study says twice, at the second place: only one of them would count; and doubts of what is driven exactly so.</summary>
internal static class StudyRepeats
{
    /// <summary>Adds the refusals.</summary>
    /// <param name="root">A document whose shape was read.</param>
    /// <param name="reader">Gathers them.</param>
    public static void Refuse(Node root, Reader reader)
    {
        foreach (var (key, nameOf) in new (string, Func<string, string>)[]
        {
            (StudyWords.Parts.Name, words => words), (StudyWords.Keep.Name, words => words), (StudyWords.Loads.Name, words => words),
            (StudyWords.Wishes.Name, words => words),
            // Two limits of one number are two of one kind, whatever they say.
            (StudyWords.Limits.Name, words => ChooseLimitReader.NameOf(words) ?? words),
        })
        {
            Twice(root.At(key), reader, nameOf);
        }

        foreach (var use in root.At(StudyWords.Use.Name)?.Items ?? [])
        {
            Twice(use.At(StudyUseWords.Loads.Name), reader, words => words);
            Twice(use.At(StudyUseWords.Speeds.Name), reader, words =>
                QuantityText.Parse<Velocity>(words) is { IsRead: true } read ? Numeral.Of(read.Amount.Si, 9) : words);
            foreach (var speed in use.At(StudyUseWords.Speeds.Name)?.Items ?? [])
            {
                if (speed.Kind == NodeKind.Scalar && QuantityText.Parse<Velocity>(speed.Text) is { IsRead: true, Amount.Doubt.IsStated: true })
                {
                    reader.Refuse(
                        speed.Place, $"{speed.Subject} is {speed.Text}: it has a doubt, and what is driven is driven exactly so fast.",
                        "Leave the doubt out.");
                }
            }
        }
    }

    private static void Twice(Node? list, Reader reader, Func<string, string> nameOf)
    {
        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var item in (list?.Items ?? []).Where(item => item.Kind == NodeKind.Scalar))
        {
            var name = nameOf(item.Text.Trim());
            if (!seen.TryAdd(name, item.Place))
            {
                var what = name == item.Text.Trim() || char.IsAsciiDigit(name[0]) ? item.Text.Trim() : $"{item.Text.Trim()}: a limit of {name}";
                reader.Refuse(
                    item.Place,
                    FormattableString.Invariant($"{list!.Subject} has {what} a second time, after line {seen[name].Line}; it may stand once."),
                    "Take one of them out.");
            }
        }
    }
}
