using System.Text;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Tests.Search;

public class SetupSearchTests
{
    private static FoundSetups Whole(MadeUpStudy study) => SetupSearch.Of(study.Task with { DrivenWhole = long.MaxValue });

    private static FoundSetups Searched(MadeUpStudy study) => SetupSearch.Of(study.Task with { DrivenWhole = 0 });

    public static TheoryData<int> Studies => [.. Enumerable.Range(1, 20)];

    [Theory]
    [MemberData(nameof(Studies))]
    public void What_is_found_by_driving_a_part_is_what_is_found_by_driving_all(int seed)
    {
        var study = new MadeUpStudy((ulong)seed, 9, 8, 6, 4);
        var (all, few) = (Whole(study), Searched(study));
        Assert.True(all.IsWhole);
        Assert.False(few.IsWhole);
        Assert.Equal(study.Space.Count, all.Driven.Length);
        var most = Enumerable.Range(0, study.Space.Places.Length).Sum(k => study.Space.Places[k].Options.Max(o => o.Price));
        Assert.InRange(MadeUpStudy.Volume(few.Front, most) / MadeUpStudy.Volume(all.Front, most), 0.999, 1.0);
        // Each that nothing beats is found, or one that is as good but for the margin.
        Assert.All(all.Front, truly => Assert.Contains(few.Front, one =>
            one.Wishes.Zip(truly.Wishes).All(pair => pair.First <= pair.Second * 1.02)));
    }

    [Fact]
    public void Of_a_large_space_a_small_part_is_driven()
    {
        var study = new MadeUpStudy(4, 20, 20, 8, 8);
        var found = Searched(study);
        Assert.True(found.Driven.Length < 0.3 * study.Space.Count, $"{found.Driven.Length} of {study.Space.Count}");
        Assert.Equal(0, found.Audit!.Missed);
        Assert.Equal(300, found.Audit.AtRandom);
        Assert.Equal(0.01, found.Audit.ShareBelow, 6);
    }

    [Fact]
    public void A_winner_that_no_number_of_its_parts_betrays_is_found_by_looking_at_those_left_out()
    {
        // One pair of parts in fifty does twice as well as all its numbers say.
        var plain = new MadeUpStudy(4, 20, 20, 8, 8);
        var study = new MadeUpStudy(4, 20, 20, 8, 8)
        {
            Hidden = setup => plain.Space.OptionAt(setup, 0) is 3 or 17 && plain.Space.OptionAt(setup, 1) is 5 or 12 or 18,
        };
        var (all, few) = (Whole(study), Searched(study));
        Assert.Contains(few.Front, one => study.Hidden!(one.Setup));
        Assert.True(few.Audit!.FoundBefore > 0 || few.Driven.Length > 1000);
        Assert.InRange(few.Front[0].Wishes[0] / all.Front[0].Wishes[0], 1.0, 1.02);
    }

    [Fact]
    public void Who_is_refused_on_the_road_stands_on_no_front_and_is_counted_by_reason()
    {
        var plain = new MadeUpStudy(6, 9, 8, 6, 4);
        var best = Whole(plain).Front[0];
        var study = new MadeUpStudy(6, 9, 8, 6, 4) { Refused = setup => plain.Space.OptionAt(setup, 0) == plain.Space.OptionAt(best.Setup, 0) };
        foreach (var found in new[] { Whole(study), Searched(study) })
        {
            Assert.DoesNotContain(found.Front, one => study.Refused!(one.Setup) && one.Setup != 0L);
            Assert.Contains(found.Driven, one => one.Refusal == 7);
        }
    }

    [Fact]
    public void The_car_as_it_is_comes_to_one_exactly()
    {
        var found = Searched(new MadeUpStudy(5, 9, 8, 6, 4));
        Assert.Equal(1.0, found.AsItIs.Wishes[0]);
        Assert.Equal(1.0, found.AsItIs.Wishes[1]);
        Assert.Equal(0.0, found.AsItIs.Wishes[2]);
    }

    [Fact]
    public void Threads_doubled_weights_and_the_order_of_the_use_cases_change_no_bit()
    {
        var study = new MadeUpStudy(8, 12, 10, 6, 5);
        var one = Searched(study);
        var two = SetupSearch.Of(study.Task with { DrivenWhole = 0, Degree = 3 });
        var three = SetupSearch.Of(study.Task with
        {
            DrivenWhole = 0,
            Columns = [.. study.Task.Columns.Reverse().Select(c => c with { Weight = 2.0 * c.Weight })],
        });
        Assert.Equal(Bytes(one), Bytes(two));
        Assert.Equal(Bytes(one), Bytes(three));
    }

    [Theory]
    [InlineData(0L, 500)]
    [InlineData(long.MaxValue, 3200)]
    public void A_search_that_is_stopped_tells_the_best_so_far(long whole, int after)
    {
        using var stop = new CancellationTokenSource();
        var study = new MadeUpStudy(4, 20, 20, 8, 8);
        var stopping = new StoppingDoer(study, after, stop);
        var found = SetupSearch.Of(study.Task with { DrivenWhole = whole, Doer = stopping, Cancellation = stop.Token });
        Assert.True(found.IsStopped);
        Assert.True(found.Driven.Length >= 300);
        Assert.Contains(found.Front, one => one.Setup != 0L && one.Wishes[0] < 1.0);
    }

    [Fact]
    public void A_limit_that_the_road_decides_is_kept_by_every_setup_of_the_front()
    {
        var study = new MadeUpStudy(9, 12, 10, 6, 5);
        var limit = new SetupLimit(
            WishKind.WorstRoad, "the slow case no worse than now", 0.9, (row, present) => (row.Numbers[0] / present.Numbers[0]) - 0.8);
        var all = SetupSearch.Of(study.Task with { Limits = [limit], DrivenWhole = long.MaxValue });
        var few = SetupSearch.Of(study.Task with { Limits = [limit], DrivenWhole = 0 });
        Assert.All(few.Front.Where(one => one.Setup != 0L), one => Assert.True(limit.Holds(one.Row, few.Present)));
        Assert.InRange(few.Front.First(one => one.Setup != 0L).Wishes[0] / all.Front.First(one => one.Setup != 0L).Wishes[0], 1.0, 1.01);
        Assert.Contains(all.Driven, one => one.Refusal == DrivenSetup.FirstLimit);
    }

    [Fact]
    public void A_limit_on_what_nobody_feels_is_left_out()
    {
        var study = new MadeUpStudy(9, 9, 8, 6, 4);
        var limit = new SetupLimit(WishKind.Hit, "the mean hit", 0.9, (_, _) => double.NaN);
        UseColumn[] columns = [.. study.Task.Columns.Select(c => c.Kind == WishKind.Hit ? c with { Floor = 1e9 } : c)];
        var found = SetupSearch.Of(study.Task with { Limits = [limit], Columns = [.. columns], DrivenWhole = long.MaxValue });
        Assert.Empty(found.Task.Limits);
        Assert.All(found.Driven, one => Assert.True(one.IsAllowed));
        Assert.DoesNotContain(WishKind.Hit, found.Wishes);
    }

    [Fact]
    public void A_car_that_settles_everywhere_before_anybody_feels_it_has_nothing_to_cure()
    {
        var study = new MadeUpStudy(9, 9, 8, 6, 4);
        UseColumn[] columns = [.. study.Task.Columns.Select(c => c.Kind == WishKind.Settling ? c with { Floor = 1e9 } : c)];
        var refused = Assert.Throws<RefusedValueException>(() => SetupSearch.Of(study.Task with { Columns = [.. columns] }));
        Assert.Contains("nothing to cure", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_search_that_stops_after_its_last_round_says_how_many_are_still_near()
    {
        var study = new MadeUpStudy(4, 20, 20, 8, 8);
        Assert.Equal(0, Searched(study).LeftNear);
        Assert.True(SetupSearch.Of(study.Task with { DrivenWhole = 0, MostRounds = 0 }).LeftNear > 0);
    }

    private static string Bytes(FoundSetups found)
    {
        var text = new StringBuilder();
        foreach (var one in found.Driven)
        {
            text.Append(one.Setup).Append(':').AppendJoin(',', one.Wishes.Select(BitConverter.DoubleToInt64Bits)).Append('\n');
        }

        return text.AppendJoin(',', found.Front.Select(one => one.Setup)).ToString();
    }

    private sealed class StoppingDoer(IPassDoer doer, int after, CancellationTokenSource stop) : IPassDoer
    {
        private int done;

        public IReadOnlyList<SetupRow> Do(Piece piece, CancellationToken cancellation)
        {
            if (Interlocked.Add(ref done, piece.Setups.Length) > after)
            {
                stop.Cancel();
            }

            return doer.Do(piece, cancellation);
        }
    }
}
