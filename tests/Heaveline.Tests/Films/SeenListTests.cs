using Heaveline.Films;

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
    public void A_change_shows_in_the_rear_frequency_and_no_change_shows_in_nothing()
    {
        var (before, same) = (Seen("fern-saloon", 1, 24.0, 26.0), Seen("fern-saloon", 11, 24.0, 26.0));
        var after = Seen("fern-saloon-cured", 5, 24.0, 26.0);
        var change = FilmChange.Of(before, after);
        Assert.True(change.IsAlike);
        Assert.True(change.Settling.High < 1.0);
        Assert.True(change.OfCar.Single(c => c.Number == Heaveline.Drives.Identification.CarNumber.RearFrequency).Change.Low > 1.0);
        var none = FilmChange.Of(before, same);
        Assert.InRange(1.0, none.Settling.Low, none.Settling.High);
        Assert.All(
            none.OfCar.Where(c => c.Number != Heaveline.Drives.Identification.CarNumber.PitchIndex),
            c => Assert.InRange(1.0, c.Change.Low, c.Change.High));
    }
}
