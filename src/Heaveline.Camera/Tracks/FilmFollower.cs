using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>From a film and its marks to tracks. The film is read twice: to the marked frame, and through; one frame is in memory at a
/// time.</summary>
internal static class FilmFollower
{
    /// <summary>How far a wheel's round pattern reaches, as a share of the wheelbase: most of a tyre.</summary>
    public const double Reach = 0.105;

    // What the frames before the mark cost when they are read for the first time, as a share of the second.
    private const double LookShare = 0.3;

    // Room round the car that is no background.
    private const double Room = 0.12;

    /// <summary>Follows the marks.</summary>
    /// <param name="film">The film.</param>
    /// <param name="marks">What was marked.</param>
    /// <param name="rowTime">How long a row is read after the one above it, s; 0: not known.</param>
    /// <param name="progress">Is told the share that is done.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="FilmRefusedException">The marks cannot be, or the car cannot be followed.</exception>
    public static FilmTrack Follow(
        IPictures film, FilmMarks marks, double rowTime = 0.0, IProgress<double>? progress = null, CancellationToken stop = default) =>
        Follow(film, marks, rowTime, SquareWheel.MostBytes, progress, stop);

    /// <summary>The same, with so many bytes at most for the pieces in which each wheel is found once more.</summary>
    public static FilmTrack Follow(
        IPictures film, FilmMarks marks, double rowTime, long most, IProgress<double>? progress, CancellationToken stop)
    {
        MarkChecks.Of(marks, film.Width, film.Height);
        var wheelbase = marks.Wheelbase;
        using var camera = new CameraFollower(film.Width);
        var turns = new List<CameraTurn>();
        var begun = 0.0;
        using var marked = Marked(
            film, marks.Time,
            picture =>
            {
                turns.Add(camera.Follow(picture.Grey, null));
                begun = LookShare * Share(film, picture.Index);
                progress?.Report(begun);
            },
            stop, out var index);
        using var body = new BodyFollower(marked, marks);
        var front = new WheelFollower(marked, marks.Front, Reach * wheelbase, wheelbase);
        var rear = new WheelFollower(marked, marks.Rear, Reach * wheelbase, wheelbase);
        using var frontPieces = new SquareWheel(Reach * wheelbase, most);
        using var rearPieces = new SquareWheel(Reach * wheelbase, most);
        var (seen, back) = (new List<SeenFrame>(), turns[index].Motion.Back());
        var home = 0;
        var (first, lastTime) = (double.NaN, double.NaN);
        Similarity? last = null, before = null;
        foreach (var picture in film.Pictures(stop))
        {
            first = double.IsNaN(first) ? picture.Time : first;
            var time = picture.Time - first;
            var guess = Ahead(last, before, seen, time);
            if (picture.Index >= turns.Count)
            {
                turns.Add(camera.Follow(picture.Grey, Car(marks, turns[^1].From(back).Motion, guess)));
            }

            // A stamp that stands still or goes back names no instant of its own.
            if (time <= lastTime)
            {
                continue;
            }

            var turn = turns[picture.Index].From(back);
            var found = body.Follow(picture.Grey, turn.Motion, guess);
            seen.Add(new SeenFrame
            {
                Time = time,
                Turn = turn,
                Body = found?.Places ?? [],
                Motion = found?.Motion ?? Similarity.None,
                Front = found is { } f ? front.Find(picture.Grey, turn.Motion, f.Motion.Of(front.Hub), f.Motion.Scale) : null,
                Rear = found is { } r ? rear.Find(picture.Grey, turn.Motion, r.Motion.Of(rear.Hub), r.Motion.Scale) : null,
            });
            home = picture.Index == index ? seen.Count - 1 : home;
            Keep(frontPieces, seen[^1].Front, picture.Grey, seen);
            Keep(rearPieces, seen[^1].Rear, picture.Grey, seen);
            (before, last, lastTime) = (last, found?.Motion, time);
            progress?.Report(begun + ((1.0 - begun) * Share(film, picture.Index)));
        }

        return new TrackAssembly(film, marks, body, Square(seen, (frontPieces, rearPieces), home, film))
        {
            RowTime = rowTime, IsTooLong = frontPieces.IsFull || rearPieces.IsFull,
        }.Whole();
    }

    private static void Keep(SquareWheel pieces, SeenHub? hub, Mat frame, List<SeenFrame> seen)
    {
        if (hub is { } at)
        {
            pieces.Keep(seen.Count - 1, frame, seen[^1].Turn.Motion, at, seen[^1].Motion.Scale);
        }
    }

    // A car that was seen aslant has its wheels found once more in the square view.
    private static ImmutableArray<SeenFrame> Square(List<SeenFrame> seen, (SquareWheel Front, SquareWheel Rear) pieces, int home, IPictures film)
    {
        if (SlantedView.Of(seen, film.Width, film.Height) is not { } view)
        {
            return [.. seen];
        }

        var (front, rear) = (pieces.Front.Found(view, home), pieces.Rear.Found(view, home));
        return front.Count == 0 || rear.Count == 0 ? [.. seen]
            : [.. seen.Select((s, i) => s with
            {
                Front = front.TryGetValue(i, out var f) ? f : s.Front, Rear = rear.TryGetValue(i, out var r) ? r : s.Rear,
            })];
    }

    /// <summary>The frame nearest to an instant, s after the first frame; whoever asks lets go of it.</summary>
    /// <param name="film">The film.</param>
    /// <param name="time">The instant.</param>
    /// <param name="look">Is shown every frame on the way, and the one after it.</param>
    /// <param name="stop">Stops it.</param>
    /// <param name="index">Its place in the film.</param>
    /// <exception cref="FilmRefusedException">The film ends before it.</exception>
    public static Mat Marked(IPictures film, double time, Action<Picture>? look, CancellationToken stop, out int index)
    {
        Mat? nearest = null;
        var (first, gap, lastTime) = (double.NaN, double.PositiveInfinity, 0.0);
        index = 0;
        try
        {
            foreach (var picture in film.Pictures(stop))
            {
                first = double.IsNaN(first) ? picture.Time : first;
                lastTime = picture.Time - first;
                look?.Invoke(picture);
                var off = Math.Abs(lastTime - time);
                // Further off than the one before: that was it.
                if (off > gap)
                {
                    return nearest!;
                }

                nearest?.Dispose();
                (nearest, gap, index) = (picture.Grey.Clone(), off, picture.Index);
            }

            return nearest is not null && gap < 0.5
                ? nearest
                : throw new FilmRefusedException(
                    string.Create(CultureInfo.InvariantCulture, $"The mark stands at {time:F2} s, and {film.Name} ends at {lastTime:F2} s."),
                    "Mark a frame of this film.");
        }
        catch
        {
            nearest?.Dispose();
            throw;
        }
    }

    private static double Share(IPictures film, int index) => (index + 1.0) / Math.Max(film.About ?? 600, index + 1);

    // Where the body goes if it goes on as it went.
    private static Similarity? Ahead(Similarity? last, Similarity? before, List<SeenFrame> seen, double time)
    {
        if (last is not { } now || before is not { } earlier)
        {
            return last;
        }

        var share = Math.Clamp((time - seen[^1].Time) / (seen[^1].Time - seen[^2].Time), 0.0, 4.0);
        return now with { X = now.X + (share * (now.X - earlier.X)), Y = now.Y + (share * (now.Y - earlier.Y)) };
    }

    private static Rect? Car(FilmMarks marks, Homography turn, Similarity? at)
    {
        if (at is not { } motion)
        {
            return null;
        }

        var room = Room * marks.Wheelbase;
        var low = Math.Max(Math.Max(marks.Front.Y, marks.Rear.Y) + (1.5 * room), marks.BoxTo.Y) + room;
        var way = turn.After(motion.Whole);
        var corners = new[]
        {
            way.Of(marks.BoxFrom.X - room, marks.BoxFrom.Y - room), way.Of(marks.BoxTo.X + room, marks.BoxFrom.Y - room),
            way.Of(marks.BoxFrom.X - room, low), way.Of(marks.BoxTo.X + room, low),
        };
        var (x, y) = (corners.Min(c => c.X), corners.Min(c => c.Y));
        return new Rect((int)x, (int)y, (int)(corners.Max(c => c.X) - x), (int)(corners.Max(c => c.Y) - y));
    }
}
