using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Whether a car heaves or pitches, in words.</summary>
internal static class HeaveWords
{
    // Reaches are written to a hundredth of a second: what is not written as one second is said, s.
    private const double WholeSecond = 0.995;

    // Up to so far from a half to either side is about a half.
    private const double AboutHalf = 0.1;

    /// <summary>1: it heaves more than it pitches; −1: it pitches more; 0: as much, or nearly so; null: it is not told.</summary>
    /// <param name="share">Share of the motion that is level, with its interval.</param>
    public static int? Of(FilmNumber share) => share.Low > 0.5 ? 1
        : share.High < 0.5 ? -1
        : share.Low >= 0.5 - AboutHalf && share.High <= 0.5 + AboutHalf ? 0 : null;

    /// <summary>Whether the settling's first second was seen, as it is written.</summary>
    public static bool IsSecond(double reach) => reach >= WholeSecond;

    /// <summary>"the first second after the rear wheels have left", or as much of it as was seen.</summary>
    public static string Span(FilmNumbers numbers) => IsSecond(numbers.Reach)
        ? "the first second after the rear wheels have left"
        : $"the {Numeral.Of(numbers.Reach, 2)} s that were seen after the rear wheels have left";

    /// <summary>The sentence of a film.</summary>
    public static string Says(FilmNumbers numbers)
    {
        var share = numbers.HeaveShare;
        if (!double.IsFinite(share.Value))
        {
            return $"Whether it heaves or pitches after the bump is not told: it is seen for {Numeral.Of(numbers.Reach, 2)} s after the rear "
                + "wheels have left.";
        }

        var of = $"{Percent(share.Value)} ({Percent(share.Low)} to {Percent(share.High)}) of the motion in {Span(numbers)} is level";
        return Of(share) switch
        {
            1 => $"It heaves more than it pitches: {of}.",
            -1 => $"It pitches more than it heaves: only {of}.",
            0 => $"It heaves about as much as it pitches: {of}.",
            _ => $"Whether it heaves more than it pitches is not told: {of}.",
        };
    }

    private static string Percent(double share) => $"{Numeral.Of(In.Percent.Of(share), 0)} %";
}
