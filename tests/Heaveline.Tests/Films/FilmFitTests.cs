using Heaveline.Films;

namespace Heaveline.Tests.Films;

/// <summary>Fits of one film beside each other.</summary>
public class FilmFitTests
{
    [Fact]
    public void A_fit_that_is_held_far_off_ranks_behind_a_free_one_though_its_own_weight_flatters_it()
    {
        var pass = FilmedCars.Pass(FilmedCars.Car("fern-saloon"), "village-hump", 25.0);
        SeenPass[] seen = [SeenPass.Of(new PlantedFilm { Pass = pass }.Track(), FilmedCars.Given(pass))];
        var known = FilmedCar.Known.ToArray();
        var start = known.Select(k => k.Centre).ToArray();
        var free = FilmFit.From(seen, known, start, TestContext.Current.CancellationToken);
        var pinned = known.ToArray();
        (pinned[FilmedCar.FrontFrequency], pinned[FilmedCar.RearFrequency]) = ((Math.Log(0.7), 1e-4), (Math.Log(2.6), 1e-4));
        start = [.. pinned.Select(k => k.Centre)];
        var held = FilmFit.From(seen, pinned, start, TestContext.Current.CancellationToken);

        Assert.True(held.Misfit > 2.0 * free.Misfit, $"{held.Misfit} {free.Misfit}");
        var ranked = FilmFit.Ranked([held, free]);
        Assert.Same(free, ranked[0].Fit);
        // By the weight that each gave itself the held one would be the better.
        Assert.True(held.Cost < free.Cost, $"{held.Cost} {free.Cost}");
        Assert.True(ranked[1].Cost > ranked[0].Cost + 100.0, $"{ranked[0].Cost} {ranked[1].Cost}");
    }
}
