using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>New variants: what a changed car differs in, written as a person would write it.</summary>
public static class VariantFile
{
    /// <summary>The text of a variant that makes one document of another.</summary>
    /// <param name="name">What the variant is called.</param>
    /// <param name="of">The file that it changes, as the variant should name it.</param>
    /// <param name="before">That file's whole document, <see cref="Reading{T}.Root"/>; of a variant the document with its bases.</param>
    /// <param name="after">The changed document.</param>
    /// <param name="note">Why; none when left out.</param>
    /// <returns>
    /// The text with its line ends as line feeds, read back and found to give the changed document; or the reason why there is none.
    /// </returns>
    public static EditOutcome Write(string name, string of, Node before, Node after, string? note = null)
    {
        if (VariantChanges.Of(before, after, CarWords.Shape) is not { } change)
        {
            return new EditOutcome(null, [], new EditRefusal(
                EditProblem.NothingChanged, "nothing is changed.", "Change a value first; a variant holds what differs from its base."));
        }

        var values = new ValueText("\n", Step, Step) { GroupsOnOneLine = false };
        var head = new List<(string Key, Node Value)> { (VariantWords.Name.Name, Node.Scalar(name)), (VariantWords.Base.Name, Node.Scalar(of)) };
        if (!string.IsNullOrWhiteSpace(note))
        {
            head.Add((VariantWords.Note.Name, Node.Scalar(note)));
        }

        var text = string.Concat(head.Append((VariantWords.Change.Name, change)).Select(pair => values.Entry(pair.Item1, pair.Item2, 0) + "\n"));
        return Problem(text, before, after) is { } refusal ? new EditOutcome(null, [], refusal) : new EditOutcome(text, [], null);
    }

    /// <summary>The text of a variant that holds some edits of its base.</summary>
    /// <param name="name">What the variant is called.</param>
    /// <param name="of">The file that it changes, as the variant should name it.</param>
    /// <param name="before">That file's whole document; of a variant the document with its bases.</param>
    /// <param name="edits">What is changed in it, one after another.</param>
    /// <param name="note">Why; none when left out.</param>
    public static EditOutcome Write(string name, string of, Node before, IEnumerable<KeyEdit> edits, string? note = null)
    {
        try
        {
            return Write(name, of, before, edits.Aggregate(before, (root, edit) => TreeEditing.Apply(root, edit, CarWords.Shape)), note);
        }
        catch (EditStopException stop)
        {
            return new EditOutcome(null, [], stop.Refusal);
        }
    }

    private const int Step = 2;

    private static EditRefusal? Problem(string text, Node before, Node after)
    {
        var reading = YamlReading.Read(new SourceText("variant", text), VariantWords.Shape);
        if (reading.Value is not { } variant)
        {
            return new EditRefusal(EditProblem.NotReadBack, reading.Refusals[0].Message, reading.Refusals[0].Advice);
        }

        return Overlay.Of(before, variant.Change, CarWords.Shape).IsSameAs(after)
            ? null
            : new EditRefusal(
                EditProblem.NotReadBack,
                "a variant cannot say this change: over its base it would be read as something else.",
                "A key without a value cannot be kept as a change; take it out or give it one.");
    }
}
