namespace Heaveline.Files.Editing;

/// <summary>What came of editing a text: the new text, or the reason why it is as it was.</summary>
/// <param name="Text">The new text; null when an edit was refused.</param>
/// <param name="Splices">
/// What was replaced, in the order of the edits, each in the text that the one before it made; none for a value
/// that was there already, none when refused.
/// </param>
/// <param name="Refusal">Why an edit was not made; null when all were.</param>
public sealed record EditOutcome(string? Text, IReadOnlyList<Splice> Splices, EditRefusal? Refusal)
{
    /// <summary>Takes all edits back: the text from before, character for character.</summary>
    /// <exception cref="ArgumentException">The text is not the one that the edits made.</exception>
    public string Undo(string edited) => Splices.Reverse().Aggregate(edited, (text, splice) => splice.Inverse.Apply(text));
}
