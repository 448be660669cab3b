using Heaveline.Camera.Frames;
using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;
using Heaveline.Films;

namespace Heaveline.CameraTests.Tracks;

public class SquareWheelTests
{
    [Fact]
    public void Pieces_that_grow_too_many_are_let_go_of_at_once_and_none_is_kept_after_them()
    {
        using var frame = new Mat(200, 200, MatType.CV_8UC1, Scalar.All(90));
        using var wheel = new SquareWheel(10.0, most: 5_000);
        var kept = new List<int>();
        for (var i = 0; i < 6; i++)
        {
            wheel.Keep(i, frame, new Homography(1, 0, 0, 0, 1, 0, 0, 0, 1), new SeenHub(100.0, 100.0, 0.1), 1.0);
            kept.Add(wheel.Count);
        }

        // A piece of 37 by 37 pixels: three are fewer than 5000, the fourth is more.
        Assert.Equal([1, 2, 3, 0, 0, 0], kept);
        Assert.True(wheel.IsFull);
    }

    [Fact]
    public void A_film_aslant_that_is_too_long_for_the_square_view_says_so()
    {
        var film = Planted.Small with { Camera = Planted.Small.Camera with { Slant = 0.14 } };
        bool IsSaid(long most) => FilmFollower.Follow(film, film.Marks(0.35, 2.0), 0.0, most, null, TestContext.Current.CancellationToken).Remarks
            .Any(r => r.Contains("once more in the square view", StringComparison.Ordinal));
        Assert.True(IsSaid(20_000));
        Assert.False(IsSaid(SquareWheel.MostBytes));
    }
}
