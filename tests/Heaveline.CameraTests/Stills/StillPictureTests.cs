using Heaveline.Camera.Stills;
using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;
using Heaveline.Films;

namespace Heaveline.CameraTests.Stills;

public class StillPictureTests
{
    [Fact]
    public void Letters_anywhere_but_on_the_wheels_leave_no_trace_finer_than_a_block()
    {
        var marks = Planted.Stand.Marks(0.9);
        using var plain = FilmFollower.Marked(Planted.Stand, marks.Time, null, default, out _);
        using var lettered = plain.Clone();
        // Letters as high as those of a plate, black and white, over the whole picture: at both ends, on the doors, on cars and people beyond.
        var (high, wide) = (Math.Max(3, (int)(0.028 * marks.Wheelbase)), Math.Max(2, (int)(0.018 * marks.Wheelbase)));
        var (letteredRows, letteredCols) = (lettered.Rows, lettered.Cols);
        for (var y = 0; y < letteredRows; y += high + 2)
        {
            for (var x = (y / (high + 2)) % 3; x < letteredCols; x += 2 * wide)
            {
                var letter = new Rect(x, y, wide, high) & new Rect(0, 0, letteredCols, letteredRows);
                Cv2.Rectangle(lettered, letter, Scalar.All(y % 2 == 0 ? 255 : 0), -1);
            }
        }

        using var still = Grey(StillPicture.Of(lettered, marks));
        var grain = Math.Max(4, (int)Math.Ceiling(StillPicture.Grain * marks.Wheelbase));
        var (rows, cols) = (still.Rows, still.Cols);
        var seen = 0;
        for (var y = 0; y + 2 < rows; y++)
        {
            for (var x = 0; x + 2 < cols; x++)
            {
                // Two steps within three pixels are finer than any block is.
                if (!IsDrawn(x, y, marks, cols) && !IsDrawn(x + 2, y, marks, cols)
                    && still.At<byte>(y, x) != still.At<byte>(y, x + 1) && still.At<byte>(y, x + 1) != still.At<byte>(y, x + 2))
                {
                    seen++;
                }
            }
        }

        Assert.Equal(0, seen);
        Assert.True(grain > 2 * high, $"{grain} {high}");
    }

    [Fact]
    public void Where_a_plate_was_the_variance_within_a_block_is_nothing_and_the_wheels_are_as_they_were_taken()
    {
        var marks = Planted.Stand.Marks(0.9);
        using var frame = FilmFollower.Marked(Planted.Stand, marks.Time, null, default, out _);
        var wheelbase = marks.Wheelbase;
        var y = (int)(marks.Front.Y - (0.1 * wheelbase));
        int[] plates = [(int)(Math.Max(marks.Front.X, marks.Rear.X) + (0.2 * wheelbase)), (int)(0.5 * (marks.Front.X + marks.Rear.X))];
        foreach (var x in plates)
        {
            Cv2.PutText(frame, "AB 123", new Point(x, y), HersheyFonts.HersheySimplex, wheelbase / 6.0 / 120.0, Scalar.All(0), 1);
        }

        using var still = Grey(StillPicture.Of(frame, marks));
        foreach (var x in plates)
        {
            var plate = new Rect(x, y - (int)(0.05 * wheelbase), (int)(0.15 * wheelbase), (int)(0.05 * wheelbase));
            Assert.True(Fine(frame, plate) > 10.0, $"{Fine(frame, plate)}");
            Assert.Equal(0.0, Fine(still, plate), 0.0);
        }

        // Outside the drawn ring the wheel is the picture that was taken.
        var tyre = new Rect((int)(marks.Front.X - (0.02 * wheelbase)), (int)(marks.Front.Y + (0.09 * wheelbase)), (int)(0.04 * wheelbase),
            Math.Max(2, (int)(0.03 * wheelbase)));
        using var taken = frame[tyre];
        using var shown = still[tyre];
        Assert.Equal(0.0, Cv2.Norm(taken, shown, NormTypes.INF), 1.0);
        // All round the car is one grey.
        Assert.Equal(128, still.At<byte>(10, 10));
    }

    [Fact]
    public void A_mark_that_is_on_no_wheel_leaves_no_clear_disc()
    {
        var marks = Planted.Stand.Marks(0.9);
        var wheelbase = marks.Wheelbase;
        using var frame = FilmFollower.Marked(Planted.Stand, marks.Time, null, default, out _);
        // A plate on the door, and the front mark on it.
        var door = new PicturePoint(0.5 * (marks.Front.X + marks.Rear.X), marks.Front.Y - (0.1 * wheelbase));
        Cv2.PutText(
            frame, "AB 123", new Point((int)(door.X - (0.09 * wheelbase)), (int)door.Y), HersheyFonts.HersheySimplex, wheelbase / 6.0 / 120.0,
            Scalar.All(0), 2);
        var plate = new Rect(
            (int)(door.X - (0.08 * wheelbase)), (int)(door.Y - (0.04 * wheelbase)), (int)(0.16 * wheelbase), (int)(0.04 * wheelbase));
        Assert.True(Fine(frame, plate) > 10.0, $"{Fine(frame, plate)}");
        Assert.False(WheelFollower.IsWheel(frame, door, FilmFollower.Reach * wheelbase, wheelbase));
        Assert.True(WheelFollower.IsWheel(frame, marks.Front, FilmFollower.Reach * wheelbase, wheelbase));
        Assert.True(WheelFollower.IsWheel(frame, marks.Rear, FilmFollower.Reach * wheelbase, wheelbase));
    }

    private static Mat Grey(Mat picture)
    {
        using var coloured = picture;
        var grey = new Mat();
        Cv2.CvtColor(coloured, grey, ColorConversionCodes.BGR2GRAY);
        return grey;
    }

    // On a disc that is clear, or on a mark that is drawn.
    private static bool IsDrawn(int x, int y, FilmMarks marks, int columns)
    {
        var thick = (2.0 * Math.Max(1, columns / 960)) + 2.0;
        bool OnDisc(PicturePoint hub) =>
            Math.Sqrt(((x - hub.X) * (x - hub.X)) + ((y - hub.Y) * (y - hub.Y))) < (StillPicture.Disc * marks.Wheelbase) + 3.0;
        bool Beside(double one, double line) => Math.Abs(one - line) < thick + 2.0;
        return OnDisc(marks.Front) || OnDisc(marks.Rear) || Beside(x, marks.BoxFrom.X) || Beside(x, marks.BoxTo.X) || Beside(y, marks.BoxFrom.Y)
            || Beside(y, marks.BoxTo.Y);
    }

    // The middle one of the deviations within patches of three pixels: patches across two blocks show a block's edge, most lie within one.
    private static double Fine(Mat of, Rect at)
    {
        var patches = new List<double>();
        for (var x = at.Left; x + 3 <= at.Right; x++)
        {
            for (var y = at.Top; y + 3 <= at.Bottom; y++)
            {
                using var part = of[new Rect(x, y, 3, 3)];
                Cv2.MeanStdDev(part, out _, out var deviation);
                patches.Add(deviation.Val0);
            }
        }

        patches.Sort();
        return patches[patches.Count / 2];
    }
}
