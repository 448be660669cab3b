using Heaveline.Drives.Identification;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Tests.Films;

/// <summary>Cars at one bump in order, and one car before a change and after it.</summary>
public class SeenListTests
{
    private static SeenCar Seen(string car, ulong seed, params double[] speeds)
    {
        var passes = speeds.Select(v => FilmedCars.Pass(FilmedCars.Car(car), "village-hump", v)).ToArray();
        return SeenCar.Of(
            car,
            "village",
            [.. passes.Select((p, i) => (new PlantedFilm { Pass = p, Seed = seed + (ulong)i }.Track(), FilmedCars.Given(p)))],
            TestContext.Current.CancellationToken);
    }

    [Fact]
    public void The_car_that_pitches_least_after_the_bump_comes_first_and_two_films_of_one_car_cannot_be_told_apart()
    {
        var (fern, again, cured) = (Seen("fern-saloon", 1, 25.0), Seen("fern-saloon", 9, 25.0), Seen("fern-saloon-cured", 1, 25.0));
        var list = SeenList.Of([fern, again, cured]);
        Assert.Same(cured, list.Cars[0]);
        Assert.True(list.IsOneSpeed);
        var pair = Assert.Single(list.NotTold);
        Assert.Equal(["fern-saloon", "fern-saloon"], [pair.First.Name, pair.Second.Name]);
        Assert.False(SeenList.Of([fern, Seen("fern-saloon", 3, 35.0)]).IsOneSpeed);
    }

    [Fact]
    public void Cars_are_put_in_order_by_films_at_one_speed_that_was_driven_and_no_interval_leaves_what_can_be()
    {
        var (both, other) = (Seen("fern-saloon", 1, 20.0, 36.0), Seen("fern-saloon-cured", 5, 35.0));
        var list = SeenList.Of([both, other]);
        Assert.True(list.IsOneSpeed);
        var there = list.Cars.Single(c => c.Name == "fern-saloon");
        Assert.Equal([1], there.Films);
        Assert.Equal(36.0 / 3.6, there.Speed, 0.03 * 36.0 / 3.6);
        Assert.Equal(there.Numbers[1].HeaveShare.Value, there.HeaveShare.Value, 1e-12);
        Assert.Equal(both.Numbers[1].PitchPerLift.Value, there.PitchPerLift.Value, 1e-12);
        // Two films of one speed that part far, as of a car that was changed between them.
        FilmNumbers Of(double pitch, double share) => both.Numbers[0] with
        {
            Reach = 1.5,
            PitchPerLift = new FilmNumber(pitch, 0.97 * pitch, 1.03 * pitch),
            HeaveShare = new FilmNumber(share, share - 0.05, share + 0.05),
        };
        var changed = both with { Passes = [both.Passes[0], both.Passes[0]], Numbers = [Of(0.2, 0.1), Of(0.08, 0.8)] };
        Assert.True(changed.MayBeChanged);
        Assert.False((changed with { Numbers = [Of(0.2, 0.1), Of(0.19, 0.2)] }).MayBeChanged);
        Assert.Equal(0.0, changed.PitchPerLift.Low);
        Assert.Equal((0.0, 1.0), (changed.HeaveShare.Low, changed.HeaveShare.High));
    }

    [Fact]
    public void More_films_do_not_sharpen_what_the_wheelbase_leaves_open()
    {
        var car = Seen("fern-saloon", 1, 24.0, 25.0, 26.0);
        var open = car with
        {
            Passes = [.. car.Passes.Select(p => p with { WheelbaseDoubt = 0.10 })],
            Numbers = [.. car.Numbers.Zip(car.Passes, (n, p) => FilmNumbers.Of(p with { WheelbaseDoubt = 0.10 }))],
        };
        Assert.True(0.5 * (open.PitchPerLift.High - open.PitchPerLift.Low) >= 0.10 * open.PitchPerLift.Value);
    }

    [Fact]
    public void Sheets_of_one_car_that_part_in_its_front_share_are_refused_and_the_one_that_says_it_counts()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("fern-saloon"), "village-hump", 25.0);
        var (track, given) = (new PlantedFilm { Pass = pass }.Track(), FilmedCars.Given(pass));
        SeenCar Of(double? first, double? second) => SeenCar.Of(
            "car", "", [.. new[] { first, second }.Select(s => (track, given with { FrontShare = s is { } v ? new Amount<Plain>(v) : null }))],
            TestContext.Current.CancellationToken);
        Assert.Contains("share on the front axle", Assert.Throws<RefusedValueException>(() => Of(0.54, 0.58)).Message, StringComparison.Ordinal);
        Assert.Equal(Of(0.60, null).Car.Of(CarNumber.FrontFrequency)!.Value, Of(null, 0.60).Car.Of(CarNumber.FrontFrequency)!.Value, 1e-9);
    }

    [Fact]
    public void Films_at_several_speeds_are_paired_each_with_the_nearest_and_what_has_no_partner_is_left_out()
    {
        var (before, after) = (Seen("fern-saloon", 1, 18.0, 24.0, 36.0), Seen("fern-saloon-cured", 5, 35.0, 18.5, 28.0));
        var change = FilmChange.Of(before, after);
        Assert.Equal([(0, 1), (2, 0)], change.Pairs);
        Assert.Equal(change.After / change.Before, change.Settling.Value, 1e-9);
        Assert.InRange(change.Settling.Value, change.Settling.Low, change.Settling.High);
        var one = FilmChange.Of(Seen("fern-saloon", 1, 18.0), Seen("fern-saloon-cured", 5, 18.5));
        Assert.True(change.Settling.High / change.Settling.Low < one.Settling.High / one.Settling.Low);
        var none = FilmChange.Of(Seen("fern-saloon", 1, 18.0), Seen("fern-saloon-cured", 5, 28.0));
        Assert.False(none.IsAlike);
        Assert.False(double.IsFinite(none.Settling.Value));
        Assert.Empty(none.OfCar);
        Assert.NotEmpty(one.OfCar);
    }

    [Theory]
    [InlineData(8.0, 25.0, true)]
    [InlineData(4.0, 50.0, true)]
    [InlineData(1.0, 25.0, false)]
    public void Slow_motion_that_nobody_told_of_is_suspected_and_a_plain_film_is_not(double slowness, double speed, bool isSuspect)
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("sprig-kit-car"), "village-hump", speed);
        var track = new PlantedFilm { Pass = pass, FrameRate = 240.0, Slowness = slowness }.Track();
        SeenCar Of(FilmTrack t, FilmGiven given) => SeenCar.Of("car", "", [(t, given)], TestContext.Current.CancellationToken);
        Assert.Equal(isSuspect, Of(track, FilmedCars.Given(pass)).MayBeSlowMotion);
        Assert.False(Of(track, FilmedCars.Given(pass) with { Slowness = slowness }).MayBeSlowMotion);
        // By what the camera wrote into the film.
        var written = Of(track with { PlayedSlower = slowness }, FilmedCars.Given(pass));
        Assert.False(written.MayBeSlowMotion);
        Assert.Equal(speed / 3.6, written.Speed, 0.03 * speed / 3.6);
        Assert.Equal(slowness != 1.0, written.Passes[0].Remarks.Any(r => r.Contains("times slower than it was taken", StringComparison.Ordinal)));
    }

    // 240 frames a second kept as 29.97; 30 written by a phone that took 24 or 27 for want of light; what no slow motion is.
    [Theory]
    [InlineData(8.01, 8.0, true)]
    [InlineData(30.0 / 24.0, 1.0, true)]
    [InlineData(30.0 / 27.0, 1.0, true)]
    [InlineData(24.0 / 30.0, 1.0, true)]
    [InlineData(0.1, 1.0, false)]
    [InlineData(1.7, 1.0, false)]
    [InlineData(2.5, 1.0, false)]
    public void What_the_camera_wrote_is_slow_motion_by_whole_numbers_alone_and_what_is_neither_is_asked_for(
        double written, double slowness, bool isTimeSaid)
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("sprig-kit-car"), "village-hump", 25.0);
        var track = new PlantedFilm { Pass = pass, FrameRate = 60.0 * slowness, Slowness = slowness }.Track() with { PlayedSlower = written };
        var seen = SeenPass.Of(track, FilmedCars.Given(pass));
        Assert.Equal(25.0 / 3.6, seen.Speed, 0.2);
        Assert.Equal(isTimeSaid, seen.IsTimeSaid);
        Assert.Equal(slowness != 1.0, seen.Remarks.Any(r => r.Contains("the car goes", StringComparison.Ordinal)));
        Assert.Equal(!isTimeSaid, seen.Remarks.Any(r => r.EndsWith("Write speed: or played-slower: into its sheet.", StringComparison.Ordinal)));
        var said = SeenPass.Of(track, FilmedCars.Given(pass) with { Slowness = slowness });
        Assert.True(said.IsTimeSaid);
        Assert.DoesNotContain(said.Remarks, r => r.Contains("what the camera wrote", StringComparison.Ordinal));
    }

    [Fact]
    public void A_film_whose_speed_and_slow_motion_contradict_or_whose_car_is_no_car_is_refused_with_both_numbers()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("sprig-kit-car"), "village-hump", 25.0);
        var (track, given) = (new PlantedFilm { Pass = pass }.Track(), FilmedCars.Given(pass));
        string Refused(FilmTrack of, FilmGiven by) => Assert.Throws<RefusedValueException>(() => SeenPass.Of(of, by)).Message;
        var both = Refused(track, given with { Speed = new(25.0 / 3.6), Slowness = 8.0 });
        Assert.Matches(@"is 25\.0 km/h, where the film, played 8\.0 times slower, shows (19|20)\d\.\d km/h", both);
        Assert.Equal(1.0, SeenPass.Of(track, given with { Speed = new(25.0 / 3.6), Slowness = 1.0 }).Slowness);
        FilmTrack Times(double share) => track with { Frames = [.. track.Frames.Select(f => f with { Time = share * f.Time })] };
        Assert.Contains("frames a second", Assert.Throws<RefusedValueException>(() => Times(1e-6)).Message, StringComparison.Ordinal);
        Assert.Contains("432.0 km/h", Refused(Times(0.05), given), StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => given with { Slowness = 0.5 });
    }

    [Fact]
    public void A_change_shows_in_the_rear_frequency_and_no_change_shows_in_nothing()
    {
        var (before, same) = (Seen("fern-saloon", 1, 24.0, 26.0), Seen("fern-saloon", 11, 24.0, 26.0));
        var after = Seen("fern-saloon-cured", 5, 24.0, 26.0);
        var change = FilmChange.Of(before, after);
        Assert.True(change.IsAlike);
        Assert.True(change.Settling.High < 1.0);
        Assert.True(change.OfCar.Single(c => c.Number == CarNumber.RearFrequency).Change.Low > 1.0);
        var none = FilmChange.Of(before, same);
        Assert.InRange(1.0, none.Settling.Low, none.Settling.High);
        Assert.All(
            none.OfCar.Where(c => c.Number != CarNumber.PitchIndex),
            c => Assert.InRange(1.0, c.Change.Low, c.Change.High));
    }
}
