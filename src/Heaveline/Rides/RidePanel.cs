namespace Heaveline.Rides;

/// <summary>One panel of a random ride's frequencies: of so many of equal ratio that make up the band, the one with this number.</summary>
/// <param name="Index">Its number, from 0 at the slow end.</param>
/// <param name="Of">How many such panels the band has, a power of two.</param>
internal readonly record struct RidePanel(int Index, int Of)
{
    /// <summary>Its slower half.</summary>
    public RidePanel Slower => new(2 * Index, 2 * Of);

    /// <summary>Its faster half.</summary>
    public RidePanel Faster => new((2 * Index) + 1, 2 * Of);

    /// <summary>The panel whose half it is.</summary>
    public RidePanel Whole => new(Index / 2, Of / 2);

    /// <summary>The whole band in so many panels.</summary>
    public static RidePanel[] All(int count) => [.. Enumerable.Range(0, count).Select(index => new RidePanel(index, count))];
}
