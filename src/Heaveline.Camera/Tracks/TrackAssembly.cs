using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Camera.Frames;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// Puts together what was found in the frames. All places are told as the camera of the marked frame would see them if it stood still and square to
/// the road: all eight numbers of the camera's turning are taken off, and the slant of its view. A track has the shift, turn and size of a camera
/// for what is left, which is none but for its doubt, and the slant that was taken off.
/// </summary>
internal sealed class TrackAssembly(IPictures film, FilmMarks marks, BodyFollower body, ImmutableArray<SeenFrame> seen)
{
    // Below, a camera stands on something: what is left is the noise of finding that it does.
    private const double Still = 0.3;

    // Share of the frames in which the background may be hidden.
    private const double Hidden = 0.1;

    private readonly List<string> remarks = [];

    /// <summary>How long a row is read after the one above it, s.</summary>
    public required double RowTime { get; init; }

    /// <summary>Whether the film was too long for its wheels to be found once more in the square view.</summary>
    public bool IsTooLong { get; init; }

    /// <summary>The track.</summary>
    /// <exception cref="FilmRefusedException">The car is seen too briefly.</exception>
    public FilmTrack Whole()
    {
        var moves = seen.Max(s => s.Turn.Motion.Moves((film.Width - 1) / 2.0, (film.Height - 1) / 2.0));
        var slant = SlantedView.Of(seen, film.Width, film.Height);
        // Where the background says nothing, nothing is known of the camera.
        var isKnown = seen.Count(s => !s.Turn.IsSeen) <= Hidden * seen.Length;
        if (isKnown && moves >= Still)
        {
            remarks.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The camera moved by up to {moves:F0} pixels from the marked frame: that is taken off, by the background."));
        }

        if (slant is not null)
        {
            remarks.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The car is seen about {In.Degrees.Of(Math.Abs(slant.Angle)):F0}° aslant in the marked frame: "
                + $"that is taken off, by the hubs' distance."));
            if (IsTooLong)
            {
                remarks.Add("The film is too long, or has too many pixels, for its wheels to be found once more in the square view: seen aslant "
                    + "they are found to a third of a pixel only. Cut it to the pass and follow it anew.");
            }
        }

        var frames = seen.Select(frame => Frame(frame, isKnown, slant)).ToImmutableArray();
        var bodies = frames.Count(f => f.Body is not null);
        var (fronts, rears) = (frames.Count(f => f.Front is not null), frames.Count(f => f.Rear is not null));
        var wheels = frames.Count(f => f.Front is not null && f.Rear is not null);
        if (bodies < FilmTrack.FewestFrames)
        {
            throw new FilmRefusedException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The body could be followed in {bodies} of {frames.Length} frames of {film.Name}; {FilmTrack.FewestFrames} are needed."),
                "Film at 60 frames a second or more from 20 to 30 m, with a short shutter, and mark a frame in which the car is sharp and whole.");
        }

        if (wheels < FilmTrack.FewestFrames)
        {
            throw new FilmRefusedException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The front wheel was found in {fronts} and the rear one in {rears} of {frames.Length} frames of {film.Name}, both in {wheels}; "
                    + $"both are needed in {FilmTrack.FewestFrames} at least."),
                "Mark the middle of each hub anew, in a frame in which both wheels are sharp and nothing stands before them.");
        }

        TellOfTheBackground();
        remarks.AddRange(LostFrames.Told(
            frames, seen, body.Points.Length, (marks.Front, marks.Rear), (film.Width, film.Height, FilmFollower.Reach * marks.Wheelbase)));
        return new FilmTrack
        {
            Width = film.Width,
            Height = film.Height,
            RowTime = RowTime,
            GoesRight = marks.GoesRight,
            Slant = slant?.Angle ?? 0.0,
            BodyPivot = slant?.Square(body.Middle) ?? body.Middle,
            Frames = frames,
            Remarks = [.. remarks],
        };
    }

    private static PicturePoint Place(SeenHub hub) => new(hub.X, hub.Y);

    private static SeenHub? Seen(SeenHub? hub, SlantedView? slant) =>
        hub is { } at && slant?.Square(Place(at)) is { } square ? at with { X = square.X, Y = square.Y } : hub;

    private FilmFrame Frame(SeenFrame frame, bool isKnown, SlantedView? slant)
    {
        PicturePoint Square(PicturePoint p) => slant?.Square(p) ?? p;
        var told = new FilmFrame { Time = frame.Time, Front = Seen(frame.Front, slant), Rear = Seen(frame.Rear, slant) };
        int[] found = [.. Enumerable.Range(0, frame.Body.Length).Where(i => frame.Body[i] is not null)];
        var fit = RigidFit.Of(
            Array.ConvertAll(found, i => Square(body.Points[i])), Array.ConvertAll(found, i => Square(frame.Body[i]!.Value)), BodyFollower.Within);
        if (fit is null)
        {
            return told;
        }

        return told with
        {
            Body = fit.Motion.About(Square(body.Middle)) with
            {
                ShiftDoubt = fit.ShiftDoubt,
                TurnDoubt = fit.TurnDoubt,
                Kept = fit.Kept,
                Dropped = body.Points.Length - fit.Kept,
            },
            // It is taken off already: what is left of it is none, by so many points.
            Camera = isKnown
                ? new SeenPose
                {
                    X = 0.0, Y = 0.0, Turn = 0.0, ShiftDoubt = frame.Turn.Doubt, Kept = frame.Turn.Kept, Dropped = frame.Turn.Dropped,
                }
                : null,
        };
    }

    private void TellOfTheBackground()
    {
        var missing = seen.Count(s => !s.Turn.IsSeen);
        if (missing > Hidden * seen.Length)
        {
            remarks.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The background is too smooth, or too much hidden, to trust ({missing} of {seen.Length} frames): "
                + $"the camera is taken to stand still there. From a hand, heights are then those of the hand too."));
        }
        else if (missing > 0)
        {
            remarks.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The background was hidden in {missing} of {seen.Length} frames: the camera is taken to stand in them as in the frame before."));
        }
    }
}
