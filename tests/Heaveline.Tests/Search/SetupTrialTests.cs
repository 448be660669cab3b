using Heaveline.Search;

namespace Heaveline.Tests.Search;

public class SetupTrialTests
{
    private static FoundSetups Found(MadeUpStudy study, params SetupLimit[] limits) =>
        SetupSearch.Of(study.Task with { Limits = [.. limits], DrivenWhole = long.MaxValue });

    // The first formula by whose best setup the car gains as much as is asked for.
    private static (MadeUpStudy Study, FoundSetups Found) Gaining(double least, double most, double doubt, params int[] options)
    {
        for (var seed = 1UL; ; seed++)
        {
            var study = new MadeUpStudy(seed, options) { Doubt = doubt };
            var found = Found(study);
            if (found.Front[0].Wishes[0] >= least && found.Front[0].Wishes[0] <= most)
            {
                return (study, found);
            }
        }
    }

    [Fact]
    public void What_another_beats_in_every_wish_beyond_its_scatter_is_dropped_and_the_best_are_not()
    {
        var study = new MadeUpStudy(2, 9, 8, 6, 4) { Doubt = 0.02 };
        var found = Found(study);
        var poor = found.Driven.OrderByDescending(one => one.Wishes[0] + one.Wishes[1]).First(one => one.Wishes[2] >= found.Front[0].Wishes[2]);
        var trial = SetupTrial.Of(found, [found.Front[0], poor], 64, null);
        Assert.Equal(64, trial.Draws);
        Assert.False(trial.Tried[1].IsDropped);
        Assert.True(trial.Tried[2].IsDropped);
        Assert.Equal(8, trial.Tried[2].Draws);
    }

    [Fact]
    public void The_car_as_it_is_comes_to_one_in_every_draw()
    {
        var study = new MadeUpStudy(2, 9, 8, 6, 4) { Doubt = 0.05 };
        var trial = SetupTrial.Of(Found(study), [], 16, null);
        Assert.All(trial.Tried[0].Wishes.SelectMany(w => w), w => Assert.Equal(1.0, w));
    }

    [Fact]
    public void A_limit_that_stands_alone_is_asked_in_drawn_cars_too_in_which_the_car_as_it_is_does_not_get_across()
    {
        // The car as it is fails in every second draw, the setup in every fourth: in none in which it can be compared.
        var study = new MadeUpStudy(2, 9, 8, 6, 4)
        {
            Doubt = 0.02,
            Uncrossed = (setup, draw) => draw >= 0 && draw % (setup == 0L ? 2 : 4) == (setup == 0L ? 1 : 3),
        };
        var beside = new SetupLimit(WishKind.Settling, "beside the car as it is", 0.9, (_, _) => -1.0);
        var found = Found(study, beside with { Says = "alone", Share = 0.5, IsAlone = true }, beside);
        var trial = SetupTrial.Of(found, [found.Front.First(one => one.Setup != 0L)], 64, null);
        Assert.Equal((32, 32), (trial.Draws, trial.Undriven));
        var one = trial.Tried[1];
        Assert.Equal([64, 32], one.Asked);
        Assert.Equal([48, 32], one.Held);
        Assert.True(one.Keeps(0, 0.5) && one.Keeps(1, 0.9));
        Assert.False(one.Keeps(0, 0.75));
        Assert.True(one.SurelyBreaks(0, 0.9));
    }

    [Fact]
    public void A_limit_said_to_hold_in_nine_cars_of_ten_does_in_fresh_draws()
    {
        // Setups around the edge of a limit: those said to keep it in 200 draws are driven in 1 000 others.
        var (study, found) = Gaining(0.4, 0.7, 0.05, 9, 8, 6, 4);
        var limit = new SetupLimit(WishKind.WorstRoad, "the fast case", 0.9, (row, present) => (row.Numbers[2] / present.Numbers[2]) - 0.9);
        var near = found.Driven.Where(one => limit.Excess(one.Row, found.Present) is > -0.12 and < 0.0).Take(30).ToArray();
        Assert.Equal(30, near.Length);
        var strict = found with { Task = found.Task with { Limits = [limit] } };
        var said = SetupTrial.Of(strict, near, 200, null).Tried.Skip(1).Where(one => !one.IsDropped && one.Keeps(0, 0.9)).ToArray();
        Assert.NotEmpty(said);
        Assert.True(said.Length < 30);
        foreach (var one in said)
        {
            var fresh = 0;
            for (var draw = 1000; draw < 2000; draw++)
            {
                var rows = study.Do(new Piece(PieceStage.Drive, [0L, one.Stated.Setup], draw), CancellationToken.None);
                fresh += limit.Holds(rows[1], rows[0]) ? 1 : 0;
            }

            Assert.True(fresh / 1000.0 >= 0.87, $"{fresh} of 1000");
        }
    }

    [Fact]
    public void The_shortlist_is_at_most_seven_each_with_a_reason_and_the_best_first()
    {
        var (_, found) = Gaining(0.3, 0.7, 0.02, 9, 8, 6, 4);
        var trial = SetupTrial.Of(found, Shortlist.Candidates(found), 32, null);
        var list = Shortlist.Of(trial);
        Assert.InRange(list.Length, 1, Shortlist.Most);
        Assert.All(list, entry => Assert.NotEmpty(entry.Reasons));
        Assert.Equal(list.Length, list.Select(entry => entry.Setup).Distinct().Count());
        Assert.Contains(list[0].Reasons[0], new[] { ShortlistReason.Best, ShortlistReason.CheapestOfBest });
        Assert.All(list, entry => Assert.True(entry.Tried.Ninth(0) <= 1.0 - Shortlist.Felt));
        var cheap = list.FirstOrDefault(entry => entry.Reasons.Contains(ShortlistReason.Cheapest));
        Assert.True(1.0 - cheap!.Tried.Ninth(0) >= Shortlist.Kept * (1.0 - list[0].Tried.Ninth(0)) - 1e-12);
    }

    [Fact]
    public void Of_setups_that_the_draws_cannot_tell_from_the_best_the_cheapest_that_surely_fits_comes_first()
    {
        var (_, found) = Gaining(0.3, 0.7, 0.02, 9, 8, 6, 4);
        var trial = SetupTrial.Of(found, Shortlist.Candidates(found), 10, null);
        var sound = trial.Tried.Skip(1).Where(one => Shortlist.IsSound(one, found.Task.Limits)).ToArray();
        var best = sound.MinBy(one => one.Ninth(0))!;
        var alike = sound.Where(one => 1.0 - one.Ninth(0) >= Shortlist.Kept * (1.0 - best.Ninth(0)) && !best.HasLess(one, 0, 0.01)
            && !best.HasLess(one, 1, 0.01)).ToArray();
        var first = Shortlist.Of(trial)[0];
        Assert.All(alike, one => Assert.True(found.Task.Space.Price(one.Stated.Setup) >= found.Task.Space.Price(first.Setup)));
        // Of nobody can say whether that one fits: another as good is told first.
        var unsure = trial.Found with { Task = found.Task with { Unsure = setup => setup == first.Setup } };
        var again = Shortlist.Of(SetupTrial.Of(unsure, Shortlist.Candidates(unsure), 10, null));
        Assert.Equal(alike.Any(one => one.Stated.Setup != first.Setup), again[0].Setup != first.Setup);
    }

    [Fact]
    public void Nothing_is_told_where_no_setup_gains_what_is_felt()
    {
        // The car as it is stands at the best of every place but for less than is felt.
        var (_, found) = Gaining(0.96, 1.0, 0.05, 3, 2);
        var trial = SetupTrial.Of(found, Shortlist.Candidates(found), 64, null);
        Assert.All(trial.Tried.Skip(1), one => Assert.True(one.Ninth(0) > 1.0 - Shortlist.Felt));
        Assert.Empty(Shortlist.Of(trial));
    }

    [Fact]
    public void What_is_best_as_stated_but_breaks_a_limit_in_half_of_the_drawn_cars_is_not_told()
    {
        var (_, found) = Gaining(0.3, 0.6, 0.05, 9, 8, 6, 4);
        var best = found.Front[0];
        var edge = (best.Row.Numbers[2] / found.Present.Numbers[2]) + 0.002;
        var limit = new SetupLimit(WishKind.WorstRoad, "the fast case", 0.9, (row, present) => (row.Numbers[2] / present.Numbers[2]) - edge);
        Assert.True(limit.Holds(best.Row, found.Present));
        var strict = found with { Task = found.Task with { Limits = [limit] } };
        var trial = SetupTrial.Of(strict, Shortlist.Candidates(found), 200, null);
        Assert.DoesNotContain(Shortlist.Of(trial), entry => entry.Setup == best.Setup);
        var tried = trial.Tried.Single(one => one.Stated.Setup == best.Setup);
        Assert.InRange(tried.Held[0] / (double)tried.Draws, 0.2, 0.8);
    }

    [Fact]
    public void Draws_are_the_same_whoever_else_is_driven()
    {
        var study = new MadeUpStudy(2, 9, 8, 6, 4) { Doubt = 0.02 };
        var found = Found(study);
        var alone = SetupTrial.Of(found, [found.Front[1]], 8, null).Tried[1];
        var among = SetupTrial.Of(found, [found.Front[0], found.Front[1]], 8, null).Tried[2];
        Assert.Equal(alone.Wishes[0].AsEnumerable(), among.Wishes[0].AsEnumerable());
    }
}
