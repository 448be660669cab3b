using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// Finds a wheel once more where the car was seen aslant. There a wheel is an ellipse, upright one share of its size and along the road another in
/// every frame, and a round template finds it to a third of a pixel only; seen square it is round and of one size throughout.
/// </summary>
internal sealed class SquareWheel : IDisposable
{
    /// <summary>Bytes of pieces of frames that are kept: more than phones film of a pass in 4K. Of a longer film none are.</summary>
    public const long MostBytes = 96_000_000;

    // Room round the wheel, as a share of its reach.
    private const double Room = 1.5;

    private readonly List<(int Frame, Mat Piece, double X, double Y, PicturePoint Hub)> pieces = [];
    private readonly double reach;
    private readonly long most;
    private long bytes;

    /// <summary>Begins to keep pieces.</summary>
    /// <param name="reach">How far the wheel reaches from its hub in the marked frame, px.</param>
    /// <param name="most">Bytes of pieces beyond which none is kept.</param>
    public SquareWheel(double reach, long most = MostBytes) => (this.reach, this.most) = (reach, most);

    /// <summary>Whether the pieces were too many: then none is kept.</summary>
    public bool IsFull => bytes > most;

    /// <summary>How many pieces are kept.</summary>
    public int Count => pieces.Count;

    /// <summary>Keeps the piece of a frame round a hub that was found, seen as the camera of the marked frame would see it.</summary>
    /// <param name="index">Its place among the frames.</param>
    /// <param name="frame">The frame.</param>
    /// <param name="turn">The camera's turning from the marked frame to this one.</param>
    /// <param name="hub">The hub.</param>
    /// <param name="scale">Size of the car beside the marked frame.</param>
    public void Keep(int index, Mat frame, Homography turn, SeenHub hub, double scale)
    {
        if (IsFull)
        {
            return;
        }

        var half = (int)Math.Ceiling(Room * reach * Math.Max(scale, 0.5)) + 3;
        var (x, y, size) = (Math.Round(hub.X) - half, Math.Round(hub.Y) - half, new Size((2 * half) + 1, (2 * half) + 1));
        bytes += (long)size.Width * size.Height;
        if (IsFull)
        {
            Dispose();
            return;
        }

        using var map = turn.After(new Homography(1, 0, x, 0, 1, y, 0, 0, 1)).ToMat();
        var piece = new Mat();
        Cv2.WarpPerspective(frame, piece, map, size, InterpolationFlags.Linear | InterpolationFlags.WarpInverseMap, BorderTypes.Replicate);
        pieces.Add((index, piece, x, y, new PicturePoint(hub.X, hub.Y)));
    }

    /// <summary>Where the hubs are by the square view, in the places of the marked frame's camera; empty where pieces were too many.</summary>
    /// <param name="view">The view.</param>
    /// <param name="marked">Place of the marked frame among the frames.</param>
    public IReadOnlyDictionary<int, SeenHub> Found(SlantedView view, int marked)
    {
        var found = new Dictionary<int, SeenHub>();
        var own = pieces.FindIndex(p => p.Frame == marked);
        if (own < 0)
        {
            return found;
        }

        var home = pieces[own];
        var back = view.Way.Back();
        // One pixel of the marked frame's upright lengths stays one.
        double Tall(PicturePoint at) => view.Square(new PicturePoint(at.X, at.Y + 1.0)).Y - view.Square(at).Y;
        var size = 1.0 / Tall(home.Hub);
        var (half, radius) = ((int)Math.Ceiling(1.35 * reach) + 3, reach);
        // The square picture about a hub, made larger so that the wheel is as tall as in the marked frame.
        (Mat Square, PicturePoint Corner) Turned((int Frame, Mat Piece, double X, double Y, PicturePoint Hub) p)
        {
            var at = view.Square(p.Hub);
            var corner = new PicturePoint(Math.Round(at.X * size) - half, Math.Round(at.Y * size) - half);
            var whole = new Homography(1, 0, -p.X, 0, 1, -p.Y, 0, 0, 1).After(back)
                .After(new Homography(1 / size, 0, corner.X / size, 0, 1 / size, corner.Y / size, 0, 0, 1));
            using var map = whole.ToMat();
            var square = new Mat();
            Cv2.WarpPerspective(
                p.Piece, square, map, new Size((2 * half) + 1, (2 * half) + 1), InterpolationFlags.Linear | InterpolationFlags.WarpInverseMap,
                BorderTypes.Replicate);
            return (square, corner);
        }

        var (first, begin) = Turned(home);
        using var learned = first;
        var start = view.Square(home.Hub);
        var near = new PicturePoint((start.X * size) - begin.X, (start.Y * size) - begin.Y);
        var template = RoundTemplate.Of(learned, near, radius);
        for (var round = 0; round < 3 && template.Find(learned, near, 1.0) is { } better; round++)
        {
            near = new PicturePoint(better.Hub.X, better.Hub.Y);
            template = RoundTemplate.Of(learned, near, radius);
        }

        foreach (var piece in pieces)
        {
            var (square, corner) = Turned(piece);
            using var picture = square;
            var at = view.Square(piece.Hub);
            if (template.Find(picture, new PicturePoint((at.X * size) - corner.X, (at.Y * size) - corner.Y), 1.0) is { } seen)
            {
                var (x, y) = back.Of((seen.Hub.X + corner.X) / size, (seen.Hub.Y + corner.Y) / size);
                found[piece.Frame] = new SeenHub(x, y, seen.Hub.Doubt);
            }
        }

        return found;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        pieces.ForEach(p => p.Piece.Dispose());
        pieces.Clear();
    }
}
