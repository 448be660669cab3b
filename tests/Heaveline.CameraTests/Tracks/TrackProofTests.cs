using Heaveline.Camera.Drawn;
using Heaveline.Camera.Frames;
using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;
using Heaveline.Films;

namespace Heaveline.CameraTests.Tracks;

/// <summary>What a track is worth, on films of which the truth is known. Marks are off by up to 2 px, as a hand's are.</summary>
public class TrackProofTests
{
    private const double Degree = Math.PI / 180.0;
    private const double Millimetre = 1e-3;

    [Fact]
    public void From_a_stand_pitch_is_within_six_hundredths_of_a_degree_and_heights_within_2_mm() => Holds(Planted.Stand, 0.06, 2.0);

    [Fact]
    public void From_a_hand_the_shake_is_taken_off()
    {
        var track = Holds(Planted.Hand, 0.06, 2.0);
        Assert.Contains(track.Remarks, r => r.StartsWith("The camera moved by up to 1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stand_is_known_as_one()
    {
        var track = Tracked(Planted.Stand with { To = Planted.Stand.From + 0.5 });
        Assert.DoesNotContain(track.Remarks, r => r.StartsWith("The camera", StringComparison.Ordinal));
        Assert.Contains(track.Frames, f => f.Camera is { Kept: > 50 });
    }

    [Fact]
    public void Rows_that_are_read_for_20_ms_are_no_pitch() => Holds(Planted.By(c => c with { Readout = 0.02 }), 0.06, 2.0);

    [Fact]
    public void Rows_that_are_read_for_20_ms_from_a_hand_are_none_either() => Holds(Planted.By(c =>
        c with { Readout = 0.02, Shake = 6.0 }), 0.06, 2.0);

    [Fact]
    public void A_car_that_goes_to_the_left_is_followed_as_one_that_goes_to_the_right() =>
        Assert.False(Holds(Planted.By(c => c with { Leftwards = true }), 0.06, 2.0).GoesRight);

    [Theory]
    [InlineData(30.0, 1.0 / 100.0)]
    [InlineData(240.0, 1.0 / 500.0)]
    public void Few_frames_a_second_and_many_do(double rate, double exposure)
    {
        var film = Planted.By(c => c with { Exposure = exposure });
        film = film with { Clock = new DrawnClock { Rate = rate }, To = rate > 100.0 ? film.From + 0.6 : film.To };
        Holds(film, 0.06, 2.0);
    }

    // At the film's ends the car is seen 30° aslant: what a straight line does not take off there is for the scale along the pass, which the core
    // fits.
    [Fact]
    public void A_camera_that_turns_after_the_car_is_followed()
    {
        var film = Planted.By(c => c with { Pan = 0.8 }) with { From = -0.3, To = 1.2 };
        var track = Holds(film, 0.06, 2.0);
        Assert.Contains(track.Remarks, r => r.StartsWith("The camera moved by up to ", StringComparison.Ordinal));
    }

    [Fact]
    public void Ten_degrees_aslant_are_taken_off() => Holds(Planted.By(c => c with { Slant = 10.0 * Degree }), 0.06, 2.0);

    [Fact]
    public void Compressed_at_a_rate_that_varies_it_is_followed_in_its_own_time()
    {
        var film = Planted.Stand with { Clock = new DrawnClock { Uneven = 0.004, HalvedFrom = 70 } };
        using var written = new WrittenFilm(film, quality: 23);
        var read = FilmFile.Open(written.Path);
        var track = FilmFollower.Follow(read, film.Marks(0.5 * (film.To - film.From), 2.0));
        Assert.Equal(film.About, track.Frames.Length);
        Assert.All(track.Frames.Index(), f => Assert.Equal(film.Clock.Of(f.Index) - film.Clock.Of(0), f.Item.Time, 1e-4));
        Holds(TrackErrors.Of(film, track), 0.06, 2.0);
    }

    [Fact]
    public void A_post_before_the_car_costs_frames_and_no_truth()
    {
        var film = Planted.Stand with { Post = 4.0 };
        var track = Holds(film, 0.06, 2.0);
        // Hidden points are dropped; those that are seen do not follow the post.
        Assert.Contains(track.Frames, f => f.Body is { } body && body.Dropped > 1.3 * Dropped(track));
        // A stretch in which a wheel was hidden is told with its time and why.
        Assert.All(
            track.Remarks.Where(r => r.Contains("the longest from", StringComparison.Ordinal)),
            r => Assert.Matches("wheel was lost in .* to .* s: (something stands before the car|it does not look there as)", r));
        Assert.Contains(track.Remarks, r => r.Contains("wheel was lost in", StringComparison.Ordinal));
    }

    [Fact]
    public void A_background_without_texture_is_said_to_be_none()
    {
        var track = Tracked(Planted.Small with { Plain = true });
        Assert.Contains(track.Remarks, r => r.StartsWith("The background is too smooth", StringComparison.Ordinal));
        Assert.DoesNotContain(Tracked(Planted.Small).Remarks, r => r.StartsWith("The background", StringComparison.Ordinal));
    }

    [Fact]
    public void Doubts_say_how_far_frames_scatter()
    {
        var track = Tracked(Planted.Stand);
        var (told, errors) = (track.Frames.Where(f => f.Body is not null).Average(f => f.Body!.TurnDoubt), TrackErrors.Of(Planted.Stand, track));
        Assert.InRange(errors.Pitch / told, 0.3, 3.0);
        var hub = track.Frames.Where(f => f.Front is not null).Average(f => f.Front!.Value.Doubt) / errors.Scale;
        Assert.InRange(Math.Max(errors.Front, errors.Rear) / hub, 0.3, 3.0);
    }

    [Fact]
    public void The_same_film_gives_the_same_track()
    {
        var (one, other) = (Tracked(Planted.Small), Tracked(Planted.Small));
        Assert.Equal(one.Frames, other.Frames);
    }

    private static double Dropped(FilmTrack track) => track.Frames.Where(f => f.Body is not null).Select(f => f.Body!.Dropped).Order().ElementAt(10);

    private static FilmTrack Tracked(DrawnFilm film) => FilmFollower.Follow(film, film.Marks(0.55 * (film.To - film.From), 2.0), film.Camera.RowTime);

    private static FilmTrack Holds(DrawnFilm film, double degrees, double millimetres)
    {
        var track = Tracked(film);
        var errors = TrackErrors.Of(film, track);
        Holds(errors, degrees, millimetres);
        // Nearly every frame of the pass is used, and the scale is that of the wheelbase.
        Assert.True(errors.Frames > 0.8 * track.Frames.Length, $"{errors.Frames} of {track.Frames.Length} frames");
        return track;
    }

    private static void Holds(TrackErrors errors, double degrees, double millimetres)
    {
        Assert.True(errors.Pitch < degrees * Degree, $"pitch {errors.Pitch / Degree:F3}°");
        Assert.True(Math.Max(errors.Front, errors.Rear) < millimetres * Millimetre, $"wheels {1e3 * errors.Front:F2} and {1e3 * errors.Rear:F2} mm");
    }
}
