using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>Words in one paragraph.</summary>
public sealed record Paragraph : Block
{
    /// <summary>The words, not blank.</summary>
    public required string Text { get; init => field = Checked.NotBlank(value, "Write a sentence."); }

    /// <summary>A paragraph of these words.</summary>
    public static Paragraph Of(string text) => new() { Text = text };

    /// <inheritdoc/>
    public override Block In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return this with { Text = units.Text(Text) };
    }
}
