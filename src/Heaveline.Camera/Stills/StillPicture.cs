using Heaveline.Camera.Tracks;
using Heaveline.Films;

namespace Heaveline.Camera.Stills;

/// <summary>
/// One frame as a picture to show: the marks on it, and nothing by which a car or a person is known. Clear are two discs about the marked hubs alone,
/// a wheel with its arch each; the rest of the car is shown in blocks coarser than any letter of a plate, a door or a face, and all round it is one
/// grey. Whether a plate, a name or a face is there is not asked, so outside the discs none can be missed. That nothing else lies within them holds
/// where the marks are on wheels: a disc under which nothing round is found is shown in blocks too. Look at the picture before it is shown.
/// </summary>
internal static class StillPicture
{
    /// <summary>Radius of the discs that stay clear, as a share of the wheelbase: a tyre has 0.11 to 0.13 (common practice, no source).</summary>
    public const double Disc = 0.14;

    /// <summary>The grain of the rest of the car, as a share of the wheelbase: a plate, a sixth of it long, becomes two or three blocks.</summary>
    public const double Grain = 0.07;

    // Beyond the hubs, the box's top and the wheels, as shares of the wheelbase: what lies further out is not the car.
    private const double Ends = 0.45;
    private const double Above = 0.1;
    private const double Below = 0.2;

    /// <summary>The picture; whoever asks lets go of it.</summary>
    public static Mat Of(Mat frame, FilmMarks marks)
    {
        var wheelbase = marks.Wheelbase;
        using var shown = new Mat(frame.Size(), MatType.CV_8UC1, Scalar.All(128));
        Blocks(frame, shown, CarOf(frame, marks), Math.Max(4, (int)Math.Ceiling(Grain * wheelbase)));
        using var discs = new Mat(frame.Size(), MatType.CV_8UC1, Scalar.All(0));
        foreach (var hub in new[] { marks.Front, marks.Rear })
        {
            if (WheelFollower.IsWheel(frame, hub, FilmFollower.Reach * wheelbase, wheelbase))
            {
                Cv2.Circle(discs, (int)Math.Round(hub.X), (int)Math.Round(hub.Y), (int)(Disc * wheelbase), Scalar.All(255), -1);
            }
        }

        frame.CopyTo(shown, discs);
        var picture = new Mat();
        Cv2.CvtColor(shown, picture, ColorConversionCodes.GRAY2BGR);
        Mark(picture, marks);
        return picture;
    }

    private static Rect CarOf(Mat frame, FilmMarks marks)
    {
        var wheelbase = marks.Wheelbase;
        return Rect.FromLTRB(
            (int)(Math.Min(marks.Front.X, marks.Rear.X) - (Ends * wheelbase)),
            (int)(marks.BoxFrom.Y - (Above * wheelbase)),
            (int)(Math.Max(marks.Front.X, marks.Rear.X) + (Ends * wheelbase)),
            (int)(Math.Max(marks.Front.Y, marks.Rear.Y) + (Below * wheelbase))) & new Rect(0, 0, frame.Cols, frame.Rows);
    }

    // Flat blocks of one grain at least: a block smoothed into the next one would keep a little of where its edges were.
    private static void Blocks(Mat from, Mat onto, Rect at, int grain)
    {
        var (columns, rows) = (Math.Max(1, at.Width / grain), Math.Max(1, at.Height / grain));
        foreach (var row in Enumerable.Range(0, rows))
        {
            foreach (var column in Enumerable.Range(0, columns))
            {
                var block = Rect.FromLTRB(
                    at.Left + (column * at.Width / columns), at.Top + (row * at.Height / rows), at.Left + ((column + 1) * at.Width / columns),
                    at.Top + ((row + 1) * at.Height / rows));
                using var part = from[block];
                using var room = onto[block];
                room.SetTo(Cv2.Mean(part));
            }
        }
    }

    private static void Mark(Mat picture, FilmMarks marks)
    {
        var (wheelbase, thick) = (marks.Wheelbase, Math.Max(1, picture.Cols / 960));
        // Orange and blue part for all eyes; front and rear are told by their shape too.
        var (ahead, behind) = (new Scalar(0, 94, 213), new Scalar(178, 114, 0));
        Cv2.Rectangle(
            picture, new Point((int)marks.BoxFrom.X, (int)marks.BoxFrom.Y), new Point((int)marks.BoxTo.X, (int)marks.BoxTo.Y), Scalar.All(255),
            thick);
        Cv2.Circle(
            picture, (int)Math.Round(marks.Front.X), (int)Math.Round(marks.Front.Y), (int)(0.06 * wheelbase), ahead, 2 * thick, LineTypes.AntiAlias);
        Cv2.DrawMarker(
            picture, new Point((int)Math.Round(marks.Rear.X), (int)Math.Round(marks.Rear.Y)), behind, MarkerTypes.Square, (int)(0.12 * wheelbase),
            2 * thick);
    }
}
