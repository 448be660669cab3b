using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>What one types at a command prompt.</summary>
public sealed record Typed : Block
{
    /// <summary>The line.</summary>
    public required string Line { get; init => field = Checked.NotBlank(value, "Give the line."); }
}
