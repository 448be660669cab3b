using Heaveline.Films;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Films;

/// <summary>Heights, speed and instants off a track, against the pass that it was planted from.</summary>
public class SeenPassTests
{
    private const double Degree = Math.PI / 180.0;

    private static readonly Dictionary<string, Func<Pass, PlantedFilm>> Cameras = new()
    {
        ["stand"] = p => new PlantedFilm { Pass = p },
        ["hand"] = p => new PlantedFilm { Pass = p, Shake = 6.0, HubNoise = 0.1, ShiftNoise = 0.1 },
        ["aslant 10°"] = p => new PlantedFilm { Pass = p, Yaw = 10.0 * Degree },
        ["hanging 10°"] = p => new PlantedFilm { Pass = p, Roll = 10.0 * Degree },
        ["rows over 20 ms"] = p => new PlantedFilm { Pass = p, RowTime = 0.020 / 1080.0 },
        ["30 a second"] = p => new PlantedFilm { Pass = p, FrameRate = 30.0 },
        ["240 a second"] = p => new PlantedFilm { Pass = p, FrameRate = 240.0 },
        ["uneven times"] = p => new PlantedFilm { Pass = p, Jitter = 0.5 },
        ["turning after the car"] = p => new PlantedFilm { Pass = p, Pan = 0.5, Shake = 1.0 },
        ["going left"] = p => new PlantedFilm { Pass = p, GoesRight = false },
    };

    public static TheoryData<string, string, string, double> Films =>
    [
        .. from camera in Cameras.Keys
           from car in new[] { ("fern-saloon", "village-hump", 40.0), ("sprig-kit-car", "village-hump", 25.0), ("drover-van", "speed-table", 25.0) }
           select (camera, car.Item1, car.Item2, car.Item3),
    ];

    [Theory, MemberData(nameof(Films))]
    public void A_film_shows_pitch_to_six_hundredths_of_a_degree_wheels_to_two_millimetres_and_the_speed(
        string camera, string car, string road, double speed)
    {
        var pass = FilmedCars.Pass(FilmedCars.Car(car), road, speed);
        var film = Cameras[camera](pass);
        var seen = SeenPass.Of(film.Track(), FilmedCars.Given(pass));

        double Off(IReadOnlyList<double> shown, IReadOnlyList<double> own) => Math.Sqrt(
            shown.Select((value, i) => Math.Pow(value - PlantedFilm.Value(pass, own, seen.Time(i) + film.FirstSeen), 2.0)).Average());
        Assert.InRange(Off(seen.Pitch, pass.Pitch) / Degree, 0.0, 0.06);
        Assert.InRange(Off(seen.FrontWheel, pass.WheelHeight(0)), 0.0, 0.002);
        Assert.InRange(Off(seen.RearWheel, pass.WheelHeight(2)), 0.0, 0.002);
        Assert.InRange(pass.Speed, seen.Speed - seen.SpeedDoubt, seen.Speed + seen.SpeedDoubt);
        Assert.InRange(seen.SpeedByDelay / pass.Speed, 0.97, 1.03);
        Assert.InRange(seen.FirstTouch + film.FirstSeen - PitchHit.Of(pass).Window.From, -0.025, 0.025);
        Assert.InRange(seen.RearLeaves + film.FirstSeen - pass.RearLeaves, -0.025, 0.025);
    }

    [Fact]
    public void Slow_motion_is_told_by_the_speed_of_the_pass_and_gives_the_same_heights()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("fern-saloon"), "village-hump", 25.0);
        var plain = new PlantedFilm { Pass = pass, FrameRate = 240.0 };
        var given = FilmedCars.Given(pass) with { Speed = new Amount<Velocity>(26.0 / 3.6) };
        var (quick, slow) = (SeenPass.Of(plain.Track(), given), SeenPass.Of((plain with { Slowness = 8.0 }).Track(), given));

        Assert.Equal(1.0, quick.Slowness);
        Assert.Equal(8.0, slow.Slowness);
        Assert.Equal(quick.Speed, slow.Speed, 1e-6);
        Assert.Equal(quick.Reach, slow.Reach, 1e-6);
    }

    [Fact]
    public void A_speed_that_no_slow_motion_explains_is_remarked()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("fern-saloon"), "village-hump", 25.0);
        var seen = SeenPass.Of(new PlantedFilm { Pass = pass }.Track(), FilmedCars.Given(pass) with { Speed = new Amount<Velocity>(36.0 / 3.6) });
        Assert.Contains(seen.Remarks, r => r.Contains("where 36.0 km/h was said", StringComparison.Ordinal));
    }

    [Fact]
    public void A_track_without_a_bump_is_refused_and_so_is_one_with_its_hubs_exchanged()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("fern-saloon"), "village-hump", 25.0);
        var track = new PlantedFilm { Pass = pass }.Track();
        var before = track with { Frames = [.. track.Frames.Take(25)] };
        Assert.Contains("bump", Assert.Throws<RefusedValueException>(() => SeenPass.Of(before, FilmedCars.Given(pass))).Message,
            StringComparison.Ordinal);
        var turned = track with { GoesRight = false };
        Assert.Contains("nose first", Assert.Throws<RefusedValueException>(() => SeenPass.Of(turned, FilmedCars.Given(pass))).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_wheel_that_is_lost_for_some_frames_is_bridged_and_one_that_is_lost_for_long_cuts_the_film()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("fern-saloon"), "village-hump", 25.0);
        var track = new PlantedFilm { Pass = pass }.Track();
        FilmTrack Without(int from, int count) =>
            track with { Frames = [.. track.Frames.Select((f, i) => i >= from && i < from + count ? f with { Rear = null } : f)] };
        var whole = SeenPass.Of(track, FilmedCars.Given(pass));
        Assert.Equal(whole.Count, SeenPass.Of(Without(20, 3), FilmedCars.Given(pass)).Count);
        Assert.True(SeenPass.Of(Without(track.Frames.Length - 30, 12), FilmedCars.Given(pass)).Count < whole.Count - 25);
    }

    [Fact]
    public void A_wheelbase_of_nothing_is_refused() =>
        Assert.Throws<RefusedValueException>(() => new FilmGiven { Wheelbase = new Amount<Length>(0.0) });
}
