using Heaveline.Camera.Stills;
using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;

namespace Heaveline.CameraTests.Stills;

public class StillPictureTests
{
    [Fact]
    public void Plates_at_both_ends_and_faces_beyond_the_car_cannot_be_read()
    {
        var marks = Planted.Stand.Marks(0.9);
        using var frame = FilmFollower.Marked(Planted.Stand, marks.Time, null, default, out _);
        var wheelbase = marks.Wheelbase;
        int[] places = [(int)marks.BoxFrom.X + 6, (int)marks.BoxTo.X - (int)(0.17 * wheelbase) - 6, 300];
        var y = (int)(marks.Front.Y - (0.1 * wheelbase));
        foreach (var x in places)
        {
            Cv2.PutText(frame, "AB 123", new Point(x, y), HersheyFonts.HersheySimplex, wheelbase / 6.0 / 120.0, Scalar.All(0), 1);
        }

        using var still = StillPicture.Of(frame, marks);
        using var grey = new Mat();
        Cv2.CvtColor(still, grey, ColorConversionCodes.BGR2GRAY);
        foreach (var x in places)
        {
            var plate = new Rect(x, y - (int)(0.05 * wheelbase), (int)(0.15 * wheelbase), (int)(0.05 * wheelbase));
            Assert.True(Fine(frame, plate) > 4.0 * Fine(grey, plate), $"{Fine(frame, plate)} {Fine(grey, plate)}");
        }

        // Somebody behind the glass, as fine as a face from twenty metres.
        var window = new Rect(
            (int)(0.5 * (marks.Front.X + marks.Rear.X)) - 20, (int)(marks.Front.Y - (0.36 * wheelbase)),
            (int)(0.12 * wheelbase), (int)(0.06 * wheelbase));
        using var behind = frame.Clone();
        for (var x = window.Left; x < window.Right; x += 4)
        {
            Cv2.Line(behind, new Point(x, window.Top), new Point(x, window.Bottom), Scalar.All(255), 2);
        }

        using var shown = StillPicture.Of(behind, marks);
        using var shownGrey = new Mat();
        Cv2.CvtColor(shown, shownGrey, ColorConversionCodes.BGR2GRAY);
        Assert.True(marks.BoxFrom.Y < window.Top, $"{marks.BoxFrom.Y} {window.Top}");
        Assert.True(Fine(behind, window) > 4.0 * Fine(shownGrey, window), $"{Fine(behind, window)} {Fine(shownGrey, window)}");

        // The car's side between its wheels is the picture that was taken.
        var door = new Rect((int)(0.5 * (marks.Front.X + marks.Rear.X)) - 20, y, 40, 10);
        Assert.Equal(Fine(frame, door), Fine(grey, door), 1.0);
    }

    // What there is of edges as fine as letters.
    private static double Fine(Mat of, Rect at)
    {
        using var part = of[at].Clone();
        using var edges = new Mat();
        Cv2.Laplacian(part, edges, MatType.CV_32F);
        Cv2.MeanStdDev(edges, out _, out var deviation);
        return deviation.Val0;
    }
}
