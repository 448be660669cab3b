namespace Heaveline.Gpu;

/// <summary>
/// When, in the samples of a run, pieces begin and end to lie within the stretches of its questions: turns of until which newest sample, and a bit a
/// question; <see cref="Closely"/> where a stretch begins or ends in the piece.
/// </summary>
internal static class DeviceTurns
{
    /// <summary>All questions are to be looked at.</summary>
    public const int Closely = -1;

    // So many questions have a bit each.
    private const int Bits = 31;

    /// <summary>The turns of one road's questions.</summary>
    /// <param name="places">Of each question the samples in which its stretch begins and ends.</param>
    /// <param name="samples">Samples of a run.</param>
    public static IEnumerable<int> Of(int[] places, int samples)
    {
        var ends = new SortedSet<int> { 2, 3, samples };
        foreach (var place in places)
        {
            // The newest sample is two past the one in which a piece begins.
            ends.UnionWith(place is >= 0 and < int.MaxValue ? [place + 2, place + 3] : []);
        }

        var from = 0;
        foreach (var until in ends.Where(end => end <= samples))
        {
            yield return until;
            yield return Word(places, from - 2);
            from = until;
        }
    }

    private static int Word(int[] places, int piece)
    {
        var word = 0;
        for (var q = 0; 2 * q < places.Length; q++)
        {
            var (first, last) = (places[2 * q], places[(2 * q) + 1]);
            var touches = piece >= first && piece <= last;
            if (touches && (piece <= 0 || piece == first || piece == last || places.Length > 2 * Bits))
            {
                return piece < 0 ? 0 : Closely;
            }

            word |= touches ? 1 << q : 0;
        }

        return word;
    }
}
