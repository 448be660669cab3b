using Heaveline.Drives.Comparison;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>One number of the passes of two drives, compared.</summary>
/// <param name="Number">Which.</param>
/// <param name="Result">What came of it.</param>
public sealed record ProvedNumber(ComparedNumber Number, BeforeAfter Result)
{
    /// <summary>Its word on a command line and for machines.</summary>
    public string Word => WordOf(Number);

    /// <summary>Its name in a sentence.</summary>
    public string Name => Number == ComparedNumber.Headline ? "pitch in the second after it" : "the peak pitch acceleration of the hit";

    /// <summary>Its name at the head of a table.</summary>
    public string Title => Number == ComparedNumber.Headline ? "RMS pitch in the second after the bump" : "Peak pitch acceleration of the hit";

    /// <summary>The unit that it is shown in.</summary>
    public ShownUnit Unit => Number == ComparedNumber.Headline ? In.Degrees : In.RadiansPerSecondSquared;

    /// <summary>The word of a number.</summary>
    public static string WordOf(ComparedNumber number) => number == ComparedNumber.Headline ? "headline" : "hit";
}
