using Heaveline.Files.Forms;

namespace Heaveline.Web.Pages.Roads;

/// <summary>One size of a road as it stands on its page.</summary>
/// <param name="Field">What is known of its key.</param>
/// <param name="Typed">What stands in its box.</param>
/// <param name="Refusal">Why it cannot be, in words; null when it can, and while it is blank.</param>
internal sealed record RoadField(FormField Field, string Typed, string? Refusal)
{
    /// <summary>Whether it must be given and is not.</summary>
    public bool IsMissing => Field.IsRequired && Typed.Trim().Length == 0;
}
