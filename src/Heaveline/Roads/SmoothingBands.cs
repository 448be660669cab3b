namespace Heaveline.Roads;

/// <summary>
/// The bands over which ISO 8608 averages a raw spectrum: octaves with centres up to 2^−5 cycles/m, third octaves up to 2^−2, twelfth octaves
/// above (after a public transcription of the standard's table). They tile by our own choice: octaves end where third octaves begin, at 2^−4.5, and
/// those end at 2^(−11/6); the ends of the fitted range, 2^−6.5 and 2^1.5 cycles/m, are ends of bands.
/// </summary>
internal static class SmoothingBands
{
    // Exponents of two in twenty-fourths, so that all ends are whole numbers.
    private const int LowestEnd = -(12 * 24) - 12;
    private const int ThirdOctaves = -108;
    private const int TwelfthOctaves = -44;

    /// <summary>The bands wholly inside a range, lowest first.</summary>
    internal static IEnumerable<SpatialBand> Within(double low, double high)
    {
        var end = LowestEnd;
        while (At(end) < high)
        {
            var next = end + (end < ThirdOctaves ? 24 : end < TwelfthOctaves ? 8 : 2);
            if (At(end) >= low && At(next) <= high)
            {
                yield return new SpatialBand(At(end), At(next));
            }

            end = next;
        }
    }

    private static double At(int end) => Math.Pow(2.0, end / 24.0);
}
