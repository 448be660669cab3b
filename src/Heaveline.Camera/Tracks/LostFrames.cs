using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>Frames between the car's first and last in which a part of it was lost: how many, the longest stretch, and why, in words.</summary>
internal static class LostFrames
{
    // A stretch of so few frames is bridged and needs no reason.
    private const int Short = 3;

    /// <summary>The sentences.</summary>
    /// <param name="frames">What is told of each frame.</param>
    /// <param name="seen">What was found in each.</param>
    /// <param name="points">How many points of the body there are.</param>
    /// <param name="hubs">Front and rear hub in the marked frame.</param>
    /// <param name="size">Width and height of the picture, and how far a wheel reaches, px.</param>
    public static IEnumerable<string> Told(
        ImmutableArray<FilmFrame> frames,
        ImmutableArray<SeenFrame> seen,
        int points,
        (PicturePoint Front, PicturePoint Rear) hubs,
        (int Width, int Height, double Wheel) size)
    {
        var all = frames.ToList();
        var (from, to) = (all.FindIndex(f => f.Body is not null), all.FindLastIndex(f => f.Body is not null));
        string Wheel(SeenFrame s, PicturePoint hub)
        {
            var at = s.Motion.Of(hub);
            var (x, y) = s.Turn.Motion.Of(at.X, at.Y);
            var reach = size.Wheel * s.Motion.Scale;
            return x < reach || y < reach || x > size.Width - 1 - reach || y > size.Height - 1 - reach
                ? "the picture's edge cuts it there"
                : s.Body.Count(p => p is not null) < 0.6 * points
                    ? "something stands before the car there"
                    : "it does not look there as in the marked frame: hidden, in another light, or blurred";
        }

        foreach (var (what, isLost, why) in new (string, Func<FilmFrame, bool>, Func<SeenFrame, string>)[]
        {
            ("body", f => f.Body is null, _ => "too few of its points are seen there: something stands before the car, or it is blurred"),
            ("front wheel", f => f.Body is not null && f.Front is null, s => Wheel(s, hubs.Front)),
            ("rear wheel", f => f.Body is not null && f.Rear is null, s => Wheel(s, hubs.Rear)),
        })
        {
            var (count, run, longest, end) = (0, 0, 0, from);
            for (var i = from; i <= to; i++)
            {
                run = isLost(all[i]) ? run + 1 : 0;
                count += run > 0 ? 1 : 0;
                (longest, end) = run > longest ? (run, i) : (longest, end);
            }

            if (count == 0)
            {
                continue;
            }

            var text = string.Create(CultureInfo.InvariantCulture, $"The {what} was lost in {count} of {to - from + 1} frames");
            yield return longest <= Short
                ? text + ", and found again."
                : text + string.Create(
                    CultureInfo.InvariantCulture,
                    $", the longest from {all[end - longest + 1].Time:F2} to {all[end].Time:F2} s: {why(seen[end - (longest / 2)])}.");
        }
    }
}
