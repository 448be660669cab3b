using Heaveline.Camera.Drawn;
using Heaveline.Camera.Tracks;
using Heaveline.CameraTests.Drawn;
using Heaveline.Drives.Identification;
using Heaveline.Files.Cars;
using Heaveline.Films;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.CameraTests.Tracks;

/// <summary>From pictures to heights in metres, all the way: what the core makes of the tracks, beside the pass that was filmed.</summary>
public class SeenProofTests
{
    private const double Degree = Math.PI / 180.0;

    [Fact]
    public void From_a_stand_with_the_frequency_ratio_to_4_per_cent() => Ratio(Holds(Planted.Stand, 0.06, 2.0), 0.04);

    [Fact]
    public void From_a_hand_with_the_frequency_ratio_to_8_per_cent()
    {
        var film = Planted.Hand;
        var track = FilmFollower.Follow(film, film.Marks(0.5 * (film.To - film.From), 2.0), film.Camera.RowTime);
        Ratio(Holds(film, track, 0.06, 2.0), 0.08);
        Assert.All(track.Frames.Where(f => f.Camera is { Dropped: > 0 }), f => Assert.InRange(f.Camera!.ShiftDoubt, 0.002, 0.5));
    }

    // Wheels are ellipses there, of another share in every frame: they are found once more in the square view.
    [Theory]
    [InlineData(10.0)]
    [InlineData(-10.0)]
    public void From_ten_degrees_aslant_heights_are_within_2_mm_and_the_slant_that_was_taken_off_is_doubted(double degrees)
    {
        var seen = Holds(Planted.By(c => c with { Slant = degrees * Degree }), 0.06, 2.0);
        Assert.InRange(seen.Slant, 0.5 * ((1.0 / Math.Cos(10.0 * Degree)) - 1.0), 2.5 * ((1.0 / Math.Cos(10.0 * Degree)) - 1.0));
        Assert.True(seen.SlantDoubt > 0.5 * seen.Slant);
    }

    [Fact]
    public void By_a_camera_that_turns_after_the_car() => Holds(Planted.By(c => c with { Pan = 0.8 }) with { From = -0.5, To = 1.8 }, 0.06, 2.0);

    // The fitted car's ratio beside the car file's own, pictures and all.
    private static void Ratio(SeenPass seen, double share)
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var own = CarBeside.Of(LoadedCar.Of(car, LoadedCar.UsualLoad(car))).Of(CarNumber.FrequencyRatio)!.Value;
        var found = CarFromFilm.Of([seen], new FilmGiven { Wheelbase = new(seen.Wheelbase) }, TestContext.Current.CancellationToken);
        var told = found.Of(CarNumber.FrequencyRatio)!;
        Assert.True(told.IsSaid);
        Assert.InRange(told.Value / own, 1.0 - share, 1.0 + share);
        Assert.InRange(own, told.Low, told.High);
    }

    // Pitch, and the heights of both wheels and of the body over them, root of the mean square.
    private static SeenPass Holds(DrawnFilm film, double degrees, double millimetres) => Holds(
        film, FilmFollower.Follow(film, film.Marks(0.5 * (film.To - film.From), 2.0), film.Camera.RowTime), degrees, millimetres);

    private static SeenPass Holds(DrawnFilm film, FilmTrack track, double degrees, double millimetres)
    {
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
        Tells(film, seen);
        return seen;
    }

    // The root mean square of the pitch while it settles stands within what is told of it, doubts of the pictures and all.
    private static void Tells(DrawnFilm film, SeenPass seen)
    {
        var told = FilmNumbers.Of(seen).For("settling-rms-pitch");
        if (told is null)
        {
            return;
        }

        const int samples = 1000;
        var own = Math.Sqrt(Enumerable.Range(0, samples).Average(i => Math.Pow(
            film.Pass.At(film.From + seen.RearLeaves + (Math.Min(1.0, seen.Reach) * i / samples)).Pitch(film.Pass.Wheelbase), 2.0)));
        Assert.InRange(own, told.Value - told.HalfWidth, told.Value + told.HalfWidth);
    }
}
