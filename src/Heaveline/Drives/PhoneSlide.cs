using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>A phone that slid round on the floor without tipping: when, and what of the drive is read beside it.</summary>
internal static class PhoneSlide
{
    // A phone turned by hand or by a bump turns at once: so much of it comes within a moment, s.
    private const double Moment = 0.6;
    private const double Felt = 0.6;
    private const double Guard = 2.0;

    /// <summary>When the gyro felt it, s; null where it did not.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="up">Up along the phone's axes.</param>
    /// <param name="turns">Turn rate, three columns, rad/s.</param>
    /// <param name="isHandTurned">Whether the gyro turns by the other hand.</param>
    /// <param name="slide">How forward turned.</param>
    public static double? Instant(EvenGrid grid, Direction up, double[][] turns, bool isHandTurned, ForwardTurn slide)
    {
        var (from, to) = (Index(slide.From), Index(slide.To));
        var size = Math.Max(1, (int)Math.Round(Moment * grid.Rate));
        // Forward turns against the phone the other way than the phone turns.
        var side = -Math.Sign(slide.Angle) * (isHandTurned ? -1.0 : 1.0);
        var (sum, most, at) = (0.0, 0.0, -1);
        for (var i = from; i <= to; i++)
        {
            sum += side * up.Dot(Levelling.At(turns, i)) / grid.Rate;
            sum -= i - size >= from ? side * up.Dot(Levelling.At(turns, i - size)) / grid.Rate : 0.0;
            (most, at) = sum > most ? (sum, i) : (most, at);
        }

        return at >= 0 && most > Felt * Math.Abs(slide.Angle) ? grid.Time(at) - (0.5 * Moment) : null;

        int Index(double t) => Math.Clamp((int)Math.Round((t - grid.Start) * grid.Rate), 0, grid.Count - 1);
    }

    /// <summary>The longer part of the drive beside a slide, with what is said of it.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="slide">How forward turned.</param>
    /// <param name="at">When, s; null where only the stretch is known.</param>
    public static (Stretch Longest, StoryLine Told) Beside(EvenGrid grid, ForwardTurn slide, double? at)
    {
        var (from, to) = at is { } instant ? (instant - Guard, instant + Guard) : (slide.From, slide.To);
        var (before, after) = (new Stretch(grid.Time(0), from), new Stretch(to, grid.Time(grid.Count - 1)));
        var longest = before.Length >= after.Length ? before : after;
        return (longest, new StoryLine(
            "turned-round",
            (at is { } when ? Text($"At {when:F0} s") : Text($"Between {slide.From:F0} and {slide.To:F0} s"))
            + Text($" forward turned by {Math.Abs(In.Degrees.Of(slide.Angle)):F0}° against the phone without gravity turning: ")
            + Text($"it slid round in its place; the longer part, {longest.From:F0} to {longest.To:F0} s, is read, the rest is not."),
            IsDoubtful: true));
    }
}
