using Heaveline.Camera.Frames;
using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;
using Heaveline.Files;
using Heaveline.Files.Films;
using Heaveline.Films;

namespace Heaveline.CameraTests.Tracks;

public class FollowingTests
{
    private static FilmMarks Marks => Planted.Small.Marks(0.35);

    [Fact]
    public void Progress_rises_to_the_end()
    {
        var told = new List<double>();
        FilmFollower.Follow(Planted.Small, Marks, 0.0, new Told(told));
        Assert.Equal(told.Order(), told);
        Assert.InRange(told[^1], 0.95, 1.0);
    }

    [Fact]
    public void It_stops_when_it_is_told_to()
    {
        using var stop = new CancellationTokenSource();
        var told = new List<double>();
        Assert.Throws<OperationCanceledException>(() => FilmFollower.Follow(Planted.Small, Marks, 0.0, new Told(told, () =>
            stop.Cancel()), stop.Token));
        Assert.Single(told);
    }

    [Fact]
    public void A_mark_off_by_2_px_is_put_right()
    {
        var (exact, off) = (Planted.Small.Marks(0.35), Planted.Small.Marks(0.35, 2.0));
        using var frame = FilmFollower.Marked(Planted.Small, exact.Time, null, default, out _);
        var wheelbase = exact.Wheelbase;
        foreach (var (truth, mark) in new[] { (exact.Front, off.Front), (exact.Rear, off.Rear) })
        {
            var found = new WheelFollower(frame, mark, 0.105 * wheelbase, wheelbase).Hub;
            Assert.Equal(truth.X, found.X, 0.4);
            Assert.Equal(truth.Y, found.Y, 0.4);
        }
    }

    [Theory]
    [InlineData("front hub", 2000.0, 300.0)]
    [InlineData("front hub", 500.0, -3.0)]
    [InlineData("front hub", double.NaN, 300.0)]
    public void A_mark_outside_the_picture_is_refused_by_name(string name, double x, double y) =>
        Refused($"The {name} is marked", Marks with { Front = new PicturePoint(x, y) });

    [Fact]
    public void One_hub_marked_twice_is_refused() => Refused("The hubs are marked 0 pixels apart", Marks with { Rear = Marks.Front });

    [Fact]
    public void A_car_that_is_not_whole_in_view_is_refused() =>
        Refused("the car is not whole in view", Marks with { BoxFrom = new PicturePoint(0.0, Marks.BoxFrom.Y) });

    [Fact]
    public void A_box_beside_the_car_is_refused() =>
        Refused("beside the box", Marks with
        {
            BoxFrom = new PicturePoint(Marks.BoxFrom.X + 200.0, Marks.BoxFrom.Y),
            BoxTo = new PicturePoint(900.0, 400.0)
        });

    [Fact]
    public void A_box_without_corners_is_refused_and_says_what_to_do()
    {
        var sky = Marks with { BoxFrom = new PicturePoint(Marks.BoxFrom.X, 2.0), BoxTo = new PicturePoint(Marks.BoxTo.X, 80.0) };
        Refused("The body shows", sky, Planted.Small with { Plain = true, Camera = Planted.Small.Camera with { Noise = 0.0 } });
    }

    // The body is followed in every frame then: it is the wheels that were not found.
    [Fact]
    public void Hubs_marked_beside_the_wheels_are_refused_by_what_was_not_found()
    {
        PicturePoint Below(PicturePoint hub) => new(hub.X, hub.Y + 60.0);
        var off = Marks with { Front = Below(Marks.Front), Rear = Below(Marks.Rear) };
        Refused("The front wheel was found in ", off);
        Refused("both are needed in 12 at least", off);
    }

    [Fact]
    public void A_mark_after_the_films_end_is_refused() => Refused("ends at 0.", Marks with { Time = 9.0 });

    [Fact]
    public void What_was_found_reads_back_as_it_was_written()
    {
        var track = FilmFollower.Follow(Planted.Small, Marks);
        var read = TrackFile.Read(new SourceText("track.csv", TrackText.Of(track))).Value!;
        Assert.Equal(track.Frames, read.Frames);
        Assert.Equal(track.Remarks, read.Remarks);
        Assert.Equal((track.Width, track.Height, track.BodyPivot, track.GoesRight), (read.Width, read.Height, read.BodyPivot, read.GoesRight));
    }

    private static void Refused(string words, FilmMarks marks, IPictures? film = null) =>
        Assert.Contains(
            words,
            Assert.Throws<FilmRefusedException>(() => FilmFollower.Follow(film ?? Planted.Small, marks)).Message,
            StringComparison.Ordinal);

    private sealed class Told(List<double> told, Action? then = null) : IProgress<double>
    {
        public void Report(double value)
        {
            told.Add(value);
            then?.Invoke();
        }
    }
}
