using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// One likely reaction to a vibration total value in public transport, ISO 2631-1 annex C. The ranges overlap, so two or three may apply at once; the
/// standard gives them as a guide, not as limits.
/// </summary>
/// <remarks>ISO 2631-1:1997, C.2.3, after public transcriptions that agree.</remarks>
public sealed record ComfortReaction
{
    private ComfortReaction(string words, double from, double to)
    {
        Words = words;
        From = from;
        To = to;
    }

    /// <summary>The reaction in words.</summary>
    public string Words { get; }

    /// <summary>Start of the range, m/s².</summary>
    public double From { get; }

    /// <summary>End of the range, m/s²; infinite for the last.</summary>
    public double To { get; }

    /// <summary>All six, from calm to rough.</summary>
    public static IReadOnlyList<ComfortReaction> All { get; } =
    [
        new("not uncomfortable", 0.0, 0.315),
        new("a little uncomfortable", 0.315, 0.63),
        new("fairly uncomfortable", 0.5, 1.0),
        new("uncomfortable", 0.8, 1.6),
        new("very uncomfortable", 1.25, 2.5),
        new("extremely uncomfortable", 2.0, double.PositiveInfinity),
    ];

    /// <summary>
    /// The reactions whose range holds a total value, one to three of them. The first range ends below 0.315, the last
    /// begins above 2; the others include both ends.
    /// </summary>
    /// <param name="total">a_v, m/s².</param>
    public static IReadOnlyList<ComfortReaction> Of(double total)
    {
        var value = Checked.Within(total, 0.0, double.MaxValue, "Give the vibration total value.", "VibrationTotalValue");
        return [.. All.Where(reaction => reaction.Holds(value))];
    }

    private bool Holds(double value) =>
        From == 0.0 ? value < To
        : double.IsInfinity(To) ? value > From
        : value >= From && value <= To;
}
