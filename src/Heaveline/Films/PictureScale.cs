namespace Heaveline.Films;

/// <summary>What is taken of a camera that says nothing of itself.</summary>
internal static class PictureScale
{
    /// <summary>
    /// Distance from lens to sensor over the sensor's width for a phone's main camera: 26 mm of 36 mm. Common practice, no source; it counts by the
    /// square of the slant, and for a camera that turns.
    /// </summary>
    public const double FocalWidths = 0.75;

    /// <summary>Half-width of it, as a share.</summary>
    public const double FocalDoubt = 0.4;
}
