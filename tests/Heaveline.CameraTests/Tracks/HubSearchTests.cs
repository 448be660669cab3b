using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;
using Heaveline.Films;

namespace Heaveline.CameraTests.Tracks;

public class HubSearchTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Two_wheels_are_suggested_where_they_are_with_and_without_a_box(bool hasBox)
    {
        foreach (var time in new[] { 0.4, 0.9, 1.4 })
        {
            var marks = Planted.Stand.Marks(time);
            using var frame = FilmFollower.Marked(Planted.Stand, marks.Time, null, default, out _);
            var found = hasBox ? HubSearch.Of(frame, marks.BoxFrom, Low(marks)) : HubSearch.Of(frame);
            Assert.NotNull(found);
            Near(marks.Rear, found.Value.Left);
            Near(marks.Front, found.Value.Right);
        }
    }

    [Fact]
    public void Where_no_car_is_none_is_suggested()
    {
        using var empty = new Mat(1080, 1920, MatType.CV_8UC1, Scalar.All(120));
        Assert.Null(HubSearch.Of(empty));
        Assert.Null(HubSearch.Of(empty, new PicturePoint(5, 5), new PicturePoint(10, 10)));
    }

    // A box that holds the wheels too.
    private static PicturePoint Low(FilmMarks marks) => new(marks.BoxTo.X, marks.BoxTo.Y + 30.0);

    private static void Near(PicturePoint truth, PicturePoint found)
    {
        Assert.Equal(truth.X, found.X, 1.0);
        Assert.Equal(truth.Y, found.Y, 1.0);
    }
}
