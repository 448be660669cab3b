using Heaveline.Films;

namespace Heaveline.Camera.Stills;

/// <summary>
/// One frame as a picture to show: the marks on it, and nothing by which a car or a person is known. Plates sit at a car's ends and faces behind
/// its glass: both ends, the glass, and all that is not the marked car's side below it, are made unreadable whole. Whether a plate or a face is
/// there is not asked.
/// </summary>
internal static class StillPicture
{
    // Beyond the hubs, as a share of the wheelbase: what lies further out is the car's end.
    private const double EndFrom = 0.15;

    // Above the higher hub, as a share of the wheelbase: further up may be glass. Common practice, no source: it begins 0.6 to 0.75 m above the hubs.
    private const double GlassFrom = 0.22;

    // The grain of what is made unreadable, as a share of the wheelbase: a plate, a sixth of it long, becomes two or three blocks.
    private const double Grain = 0.07;

    /// <summary>The picture; whoever asks lets go of it.</summary>
    public static Mat Of(Mat frame, FilmMarks marks)
    {
        var wheelbase = marks.Wheelbase;
        var whole = new Rect(0, 0, frame.Cols, frame.Rows);
        using var coarse = new Mat();
        var block = Math.Max(4.0, Grain * wheelbase);
        Cv2.Resize(frame, coarse, new Size(Math.Max(2, frame.Cols / block), Math.Max(2, frame.Rows / block)), 0, 0, InterpolationFlags.Area);
        using var shown = new Mat();
        Cv2.Resize(coarse, shown, frame.Size(), 0, 0, InterpolationFlags.Linear);
        var (left, right) = (Math.Min(marks.Front.X, marks.Rear.X), Math.Max(marks.Front.X, marks.Rear.X));
        var side = Rect.FromLTRB(
            (int)(left - (EndFrom * wheelbase)),
            (int)Math.Max(marks.BoxFrom.Y, Math.Min(marks.Front.Y, marks.Rear.Y) - (GlassFrom * wheelbase)),
            (int)(right + (EndFrom * wheelbase)),
            (int)Math.Max(marks.BoxTo.Y, Math.Max(marks.Front.Y, marks.Rear.Y) + (0.15 * wheelbase))) & whole;
        using (var clear = frame[side])
        using (var room = shown[side])
        {
            clear.CopyTo(room);
        }

        var picture = new Mat();
        Cv2.CvtColor(shown, picture, ColorConversionCodes.GRAY2BGR);
        var thick = Math.Max(1, frame.Cols / 960);
        // Orange and blue part for all eyes; front and rear are told by their shape too.
        var (ahead, behind) = (new Scalar(0, 94, 213), new Scalar(178, 114, 0));
        Cv2.Rectangle(
            picture, new Point((int)marks.BoxFrom.X, (int)marks.BoxFrom.Y), new Point((int)marks.BoxTo.X, (int)marks.BoxTo.Y), new Scalar(255,
                255, 255), thick);
        Cv2.Circle(picture, (int)Math.Round(marks.Front.X), (int)Math.Round(marks.Front.Y), (int)(0.06 * wheelbase), ahead, 2 * thick,
            LineTypes.AntiAlias);
        Cv2.DrawMarker(
            picture, new Point((int)Math.Round(marks.Rear.X), (int)Math.Round(marks.Rear.Y)), behind, MarkerTypes.Square,
                (int)(0.12 * wheelbase), 2 * thick);
        return picture;
    }
}
