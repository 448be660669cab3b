using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>A sentence that stands out, because somebody could be hurt or misled without it.</summary>
public sealed record Caution : Block
{
    /// <summary>The sentence.</summary>
    public required string Text { get; init => field = Checked.NotBlank(value, "Say what to beware of."); }

    /// <summary>A caution of these words.</summary>
    public static Caution Of(string text) => new() { Text = text };

    /// <inheritdoc/>
    public override Block In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return this with { Text = units.Text(Text) };
    }
}
