using Heaveline.Files.Yaml;

namespace Heaveline.Files.Editing;

/// <summary>
/// Edits the text of a file as a person would: one place changes, and every other character (comments, order, blank lines, quotes, line ends)
/// stays. Every edit is read back before it is handed out: the text that results has exactly the wanted change, or the edit is refused.
/// </summary>
internal static class YamlEditing
{
    /// <summary>The text with all edits in it, one after another; or as it was, with the first refusal.</summary>
    /// <param name="text">The text. A byte order mark at its start stays.</param>
    /// <param name="kindOf">How the document is written, from its root; null when unknown.</param>
    /// <param name="edits">The edits.</param>
    public static EditOutcome Apply(string text, Func<Node, Kind?> kindOf, IEnumerable<KeyEdit> edits)
    {
        var mark = text.StartsWith('\uFEFF') ? "\uFEFF" : "";
        var current = text[mark.Length..];
        var splices = new List<Splice>();
        foreach (var edit in edits)
        {
            try
            {
                var splice = Splice(current, kindOf, edit);
                current = splice.Apply(current);
                if (splice.Removed != splice.Inserted)
                {
                    splices.Add(splice with { Start = splice.Start + mark.Length });
                }
            }
            catch (EditStopException stop)
            {
                return new EditOutcome(null, [], stop.Refusal);
            }
        }

        return new EditOutcome(mark + current, splices, null);
    }

    private static Splice Splice(string text, Func<Node, Kind?> kindOf, KeyEdit edit)
    {
        var reading = YamlReading.Value(new SourceText("", text));
        if (reading.Value is not { } root)
        {
            var refusal = reading.Refusals[0];
            throw new EditStopException(EditProblem.NotSound, $"line {refusal.Line}: {refusal.Message}", refusal.Advice);
        }

        var kind = kindOf(root);
        var wanted = TreeEditing.Apply(root, edit, kind);
        if (wanted.IsSameAs(root, inOrder: true))
        {
            return new Splice(0, "", "");
        }

        var lines = new Lines(text);
        var written = Layout.Of(lines, root);
        lines.Learn(written);

        // Plain where it can be, in quotes where the parser needs them after all.
        foreach (var alwaysQuoted in new[] { false, true })
        {
            var splice = new TextEditing(lines, edit, new ValueText(lines.Break, lines.Step, lines.DashStep) { AlwaysQuoted = alwaysQuoted })
                .Splice(written, kind);
            if (YamlReading.Value(new SourceText("", splice.Apply(text))).Value is { } read && read.IsSameAs(wanted, inOrder: true))
            {
                return splice;
            }
        }

        throw new EditStopException(
            EditProblem.NotReadBack,
            $"with {string.Join(" ", edit.Path)} changed, the text would be read as something else, or not at all.",
            "Make this change in the file itself.");
    }
}
