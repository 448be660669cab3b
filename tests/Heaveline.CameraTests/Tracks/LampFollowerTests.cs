using Heaveline.Camera.Frames;
using Heaveline.Camera.Tracks;
using Heaveline.Films;

namespace Heaveline.CameraTests.Tracks;

public class LampFollowerTests
{
    [Fact]
    public void A_lamp_that_comes_nearer_and_pulses_is_followed_and_its_pulse_is_read()
    {
        var night = new Night();
        var track = LampFollower.Follow(night, new PicturePoint(night.Place(60).X, night.Place(60).Y), 60 / 30.0);
        Assert.Equal(120, track.Times.Length);
        // Its growth is even, its pulse is not: the turns of the brightness over its mean of a second are those of the pulse.
        double[] pulse = [.. Enumerable.Range(15, 90).Select(k => (track.Brightness[k] / Enumerable.Range(k - 15, 31).Average(j =>
            track.Brightness[j])) - 1.0)];
        double[] planted = [.. Enumerable.Range(15, 90).Select(k => Math.Sin(2.0 * Math.PI * 1.5 * k / 30.0))];
        Assert.True(pulse.Zip(planted).Sum(p => p.First * p.Second) / Math.Sqrt(pulse.Sum(p => p * p) * planted.Sum(p => p * p)) > 0.95);
        Assert.InRange(track.Saturated, 0.0, 0.2);
    }

    [Fact]
    public void A_lamp_that_was_bright_where_it_was_marked_is_followed_where_it_is_dimmer_and_no_frame_is_lost() =>
        Assert.DoesNotContain(0.0, LampFollower.Follow(new Night { Strength = 110.0 }, new PicturePoint(new Night().Place(60).X,
            new Night().Place(60).Y), 2.0).Brightness);

    [Fact]
    public void A_lamp_that_ends_the_scale_is_said_to() =>
        Assert.True(LampFollower.Follow(new Night { Strength = 2000.0 }, new PicturePoint(new Night().Place(60).X, new Night().Place(60).Y),
            2.0).Saturated > 0.8);

    [Fact]
    public void Where_no_lamp_shines_none_is_followed()
    {
        Assert.Contains("No lamp shines", Assert.Throws<FilmRefusedException>(
            () => LampFollower.Follow(new Night(), new PicturePoint(100, 400), 2.0)).Message, StringComparison.Ordinal);
        Assert.Contains("outside the picture", Assert.Throws<FilmRefusedException>(
            () => LampFollower.Follow(new Night(), new PicturePoint(-1, 400), 2.0)).Message, StringComparison.Ordinal);
    }

    // A dark road, a street lamp that burns on, a headlamp that comes nearer and pulses one and a half times a second.
    private sealed class Night : IPictures
    {
        public double Strength { get; init; } = 150.0;

        public string Name => "night";

        public int Width => 960;

        public int Height => 540;

        public int? About => 120;

        public IEnumerable<Picture> Pictures(CancellationToken stop = default)
        {
            for (var k = 0; k < 120; k++)
            {
                using var grey = new Mat(Height, Width, MatType.CV_32FC1, Scalar.All(12));
                var (x, y) = Place(k);
                var wide = 3.0 + (0.01 * k);
                Add(grey, x, y, wide, Strength * (1.0 + (0.3 * Math.Sin(2.0 * Math.PI * 1.5 * k / 30.0))));
                Add(grey, 150.0, 80.0, 4.0, 220.0);
                using var bytes = new Mat();
                grey.ConvertTo(bytes, MatType.CV_8UC1);
                yield return new Picture(k, 5.0 + (k / 30.0), bytes);
            }
        }

        public (double X, double Y) Place(int k) => (480.0 + (1.1 * k), 260.0 + (0.3 * k));

        private static void Add(Mat on, double x, double y, double wide, double light)
        {
            var pixels = on.AsSpan<float>();
            for (var v = (int)y - 30; v <= (int)y + 30; v++)
            {
                for (var u = (int)x - 30; u <= (int)x + 30; u++)
                {
                    pixels[(v * on.Cols) + u] += (float)(light * Math.Exp(-(((u - x) * (u - x)) + ((v - y) * (v - y))) / (2.0 * wide * wide)));
                }
            }
        }
    }
}
