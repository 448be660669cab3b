using Heaveline.Camera.Drawn;
using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;
using Heaveline.Films;

namespace Heaveline.CameraTests.Tracks;

/// <summary>From pictures to heights in metres, all the way: what the core makes of the tracks, beside the pass that was filmed.</summary>
public class SeenProofTests
{
    private const double Degree = Math.PI / 180.0;

    [Fact]
    public void From_a_stand() => Holds(Planted.Stand, 0.06, 2.0);

    [Fact]
    public void From_a_hand() => Holds(Planted.Hand, 0.06, 2.0);

    // Where the car is seen smallest, a wheel is an ellipse of a few pixels less: 2.4 mm is what is reached, not 2.
    [Fact]
    public void From_ten_degrees_aslant_heights_are_within_2_mm_and_a_half() => Holds(Planted.By(c => c with { Slant = 10.0 * Degree }), 0.06, 2.5);

    [Fact]
    public void By_a_camera_that_turns_after_the_car() => Holds(Planted.By(c => c with { Pan = 0.8 }) with { From = -0.5, To = 1.8 }, 0.06, 2.0);

    // Pitch, and the heights of both wheels and of the body over them, root of the mean square.
    private static void Holds(DrawnFilm film, double degrees, double millimetres)
    {
        var track = FilmFollower.Follow(film, film.Marks(0.5 * (film.To - film.From), 2.0), film.Camera.RowTime);
        var seen = SeenPass.Of(track, new FilmGiven { Wheelbase = new(film.Pass.Wheelbase) });
        var truth = Enumerable.Range(0, seen.Count).Select(i => film.Pass.At(film.From + seen.Time(i))).ToList();
        double Rms(Func<int, double> error) => Math.Sqrt(Enumerable.Range(0, seen.Count).Average(i => Math.Pow(error(i), 2.0)));
        var pitch = Rms(i => seen.Pitch[i] - truth[i].Pitch(film.Pass.Wheelbase)) / Degree;
        double[] heights =
        [
            1e3 * Rms(i => seen.FrontWheel[i] - truth[i].FrontWheel), 1e3 * Rms(i => seen.RearWheel[i] - truth[i].RearWheel),
            1e3 * Rms(i => seen.FrontBody[i] - truth[i].Front), 1e3 * Rms(i => seen.RearBody[i] - truth[i].Rear),
        ];
        Assert.True(
            pitch < degrees && heights.Max() < millimetres,
            $"pitch {pitch:F3}°, heights {string.Join(", ", heights.Select(h => $"{h:F2}"))} mm; {string.Join(' ', seen.Remarks)}");
    }
}
