using Heaveline.Drives.Comparison;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Tests.Drives.Comparison;

public class BeforeAfterTests
{
    [Fact]
    public void A_change_is_the_ratio_that_was_planted_whatever_the_speeds()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 6, 0.02, speed: 6.0), .. Passes("hump", 7, 0.02, speed: 6.1, change: -0.15, isAfter: true)]);
        Assert.Equal(ComparisonVerdict.Worked, result.Verdict);
        Assert.Equal(-0.15, result.Pooled!.Value, 0.015);
        Assert.InRange(-0.15, result.Pooled.Low, result.Pooled.High);
        Assert.Equal(13 - 3, result.Pooled.Freedom);
        Assert.Equal((6, 7), (result.Before, result.After));
    }

    [Fact]
    public void What_grows_with_speed_alone_is_no_change()
    {
        // The number grows with the square of speed and the second drive is 5 % faster: the plain means differ by a tenth.
        var passes = Passes("hump", 8, 0.01, speed: 6.0, growth: 2.0)
            .Concat(Passes("hump", 8, 0.01, speed: 6.3, growth: 2.0, isAfter: true)).ToList();
        var result = BeforeAfter.Of(passes);
        Assert.InRange(passes.Where(p => p.IsAfter).Average(p => p.Value) / passes.Where(p => !p.IsAfter).Average(p => p.Value), 1.05, 1.20);
        Assert.Equal(ComparisonVerdict.NoDifference, result.Verdict);
        Assert.InRange(result.Pooled!.Value, -0.02, 0.02);
    }

    [Theory]
    [InlineData(-0.16, 0.06, ComparisonVerdict.Worked)]
    [InlineData(-0.05, 0.03, ComparisonVerdict.FellLittle)]
    [InlineData(0.01, 0.05, ComparisonVerdict.NoDifference)]
    [InlineData(0.05, 0.03, ComparisonVerdict.RoseLittle)]
    [InlineData(0.16, 0.06, ComparisonVerdict.Worse)]
    [InlineData(-0.05, 0.08, ComparisonVerdict.CannotSay)]
    [InlineData(0.02, 0.2, ComparisonVerdict.CannotSay)]
    public void An_interval_has_one_verdict(double log, double half, ComparisonVerdict verdict) => Assert.Equal(
        verdict, BeforeAfter.Of(new EffectInterval { Log = log, HalfWidth = half, StandardError = half, Freedom = 9, Probability = 0.5 }, 0.1));

    [Fact]
    public void The_same_passes_again_are_no_difference_at_any_site()
    {
        // To the last bit, and with what an export cuts off: the sums of squares with and without the sites' own changes differ by rounding alone.
        foreach (var (cut, count) in new[] { 0.0, 1e-16, 1e-15, 1e-12 }.SelectMany(cut => Enumerable.Range(4, 12).Select(n => (cut, n))))
        {
            ComparedPass[] before = [.. Passes("hump", count, 0.02), .. Passes("dip", count + 1, 0.03), .. Passes("joint", count, 0.02, speed: 9.0)];
            var result = BeforeAfter.Of([.. before, .. before.Select(p => p with { IsAfter = true, Value = p.Value * (1.0 + cut) })]);
            Assert.Equal(ComparisonVerdict.NoDifference, result.Verdict);
            Assert.False(result.AreApart);
        }
    }

    [Fact]
    public void Drives_whose_speeds_do_not_meet_are_not_compared()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 8, 0.02, speed: 5.0), .. Passes("hump", 8, 0.02, speed: 8.5, isAfter: true)]);
        Assert.Equal(ComparisonVerdict.NotAlike, result.Verdict);
        Assert.Null(result.Pooled);
        Assert.False(Assert.Single(result.Sites).Speeds.IsAlike);
        Assert.Equal(16, result.LeftOut.Length);
    }

    [Fact]
    public void Only_passes_at_speeds_that_both_drives_have_count()
    {
        ComparedPass[] fast = [.. Passes("hump", 3, 0.02, speed: 14.0, isAfter: true)];
        var result = BeforeAfter.Of([.. Passes("hump", 8, 0.02), .. Passes("hump", 8, 0.02, isAfter: true), .. fast]);
        Assert.Equal(fast, result.LeftOut);
        Assert.Equal((8, 8), (result.Before, result.After));
    }

    [Fact]
    public void Three_passes_are_too_few()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 3, 0.02), .. Passes("hump", 9, 0.02, isAfter: true)]);
        Assert.Equal(ComparisonVerdict.TooFew, result.Verdict);
        Assert.Null(result.Pooled);
        Assert.True(double.IsNaN(result.PowerAt(6, 0.1)));
    }

    [Fact]
    public void Nothing_in_common_is_too_few_and_names_the_sites()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 9, 0.02), .. Passes("joint", 9, 0.02, isAfter: true)]);
        Assert.Equal(ComparisonVerdict.TooFew, result.Verdict);
        Assert.Equal(["hump", "joint"], result.CrossedOnce);
        Assert.Equal(ComparisonVerdict.TooFew, BeforeAfter.Of([]).Verdict);
    }

    [Fact]
    public void One_speed_before_and_another_after_hide_the_change()
    {
        var result = BeforeAfter.Of(
            [.. Passes("hump", 6, 0.02, speed: 6.0, spread: 0.0), .. Passes("hump", 6, 0.02, speed: 6.1, spread: 0.0, isAfter: true)]);
        Assert.Equal(ComparisonVerdict.NotAlike, result.Verdict);
        Assert.True(result.IsHiddenInSpeed);
        Assert.Null(result.Pooled);
    }

    [Fact]
    public void One_speed_in_both_drives_is_compared_without_a_slope()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 6, 0.02, spread: 0.0), .. Passes("hump", 6, 0.02, spread: 0.0, change: -0.2, isAfter: true)]);
        Assert.Equal(ComparisonVerdict.Worked, result.Verdict);
        Assert.Equal(10, result.Pooled!.Freedom);
    }

    [Fact]
    public void Sites_that_answer_in_opposite_senses_are_told_apart()
    {
        var result = BeforeAfter.Of(
        [
            .. Passes("hump", 8, 0.02), .. Passes("hump", 8, 0.02, change: -0.2, isAfter: true),
            .. Passes("joint", 8, 0.02), .. Passes("joint", 8, 0.02, change: 0.25, isAfter: true),
        ]);
        Assert.Equal(ComparisonVerdict.SitesDiffer, result.Verdict);
        Assert.True(result.AreApart);
        Assert.Equal([ComparisonVerdict.Worked, ComparisonVerdict.Worse], result.Sites.Select(s => s.Verdict));
        Assert.Equal(-0.2, result.Sites[0].Effect!.Value, 0.02);
        Assert.Equal(0.25, result.Sites[1].Effect!.Value, 0.03);
    }

    [Fact]
    public void Sites_that_answer_more_and_less_in_one_sense_keep_one_verdict()
    {
        var result = BeforeAfter.Of(
        [
            .. Passes("hump", 8, 0.02), .. Passes("hump", 8, 0.02, change: -0.25, isAfter: true),
            .. Passes("joint", 8, 0.02), .. Passes("joint", 8, 0.02, change: -0.12, isAfter: true),
        ]);
        Assert.True(result.AreApart);
        Assert.Equal(ComparisonVerdict.Worked, result.Verdict);
        Assert.InRange(result.Pooled!.Value, -0.21, -0.15);
    }

    [Fact]
    public void Kinds_of_bump_grow_with_speed_by_themselves()
    {
        var result = BeforeAfter.Of(
        [
            .. Passes("hump", 8, 0.01, growth: 2.0, kind: "hump"), .. Passes("hump", 8, 0.01, growth: 2.0, kind: "hump", isAfter: true),
            .. Passes("joint", 8, 0.01, growth: -2.0, kind: "edge"), .. Passes("joint", 8, 0.01, growth: -2.0, kind: "edge", isAfter: true),
        ]);
        Assert.Equal(ComparisonVerdict.NoDifference, result.Verdict);
        Assert.InRange(result.Scatter, 0.0, 0.02);
    }

    [Fact]
    public void Few_passes_over_each_of_many_sites_are_pooled()
    {
        var result = BeforeAfter.Of(
        [
            .. Enumerable.Range(1, 4).SelectMany(s => Passes($"hump {s}", 2, 0.03, spread: 0.02, level: s)
                .Concat(Passes($"hump {s}", 2, 0.03, spread: 0.02, level: s, change: -0.2, isAfter: true))),
        ]);
        Assert.Equal(ComparisonVerdict.Worked, result.Verdict);
        Assert.Equal(4, result.Sites.Length);
        Assert.Equal((8, 8), (result.Before, result.After));
    }

    [Fact]
    public void A_pass_far_from_all_others_is_named_and_kept()
    {
        var before = Passes("hump", 8, 0.02).ToArray();
        before[4] = before[4] with { Value = 1.5 * before[4].Value };
        var result = BeforeAfter.Of([.. before, .. Passes("hump", 8, 0.02, isAfter: true)]);
        Assert.Equal(before[4], Assert.Single(result.Odd).Pass);
        Assert.Equal(8, result.Before);
        Assert.Empty(BeforeAfter.Of([.. Passes("hump", 8, 0.02), .. Passes("hump", 8, 0.02, isAfter: true)]).Odd);
    }

    [Fact]
    public void The_chance_of_these_drives_is_the_one_that_the_curve_has_at_so_many_passes()
    {
        // Speeds that do not meet well, a doubt that all passes share, more passes after.
        var result = BeforeAfter.Of([.. Passes("hump", 7, 0.06), .. Passes("hump", 9, 0.06, speed: 6.3, isAfter: true)], null, 0.02);
        Assert.Equal(result.Power, result.PowerAt(7, 0.1), 1e-12);
        var (here, there) = (result.PowerAt(7, 0.1), result.PowerAt(14, 0.1));
        Assert.InRange(here, 0.1, there - 0.05);

        // Equally many passes: the error is that of the interval, by which the noncentral t tells the chance.
        var even = BeforeAfter.Of([.. Passes("hump", 8, 0.06), .. Passes("hump", 8, 0.06, speed: 6.3, isAfter: true)], null, 0.02);
        var effect = even.Pooled!;
        Assert.Equal(
            StudentPower.Above(Math.Log(1.1) / effect.StandardError, effect.Freedom, LeastSquares.Student(effect.Freedom, 0.9)),
            even.Power, 1e-9);
    }

    [Fact]
    public void Passes_that_are_needed_give_four_of_five_and_one_less_does_not()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 6, 0.10), .. Passes("hump", 6, 0.10, isAfter: true)]);
        Assert.Equal(ComparisonVerdict.CannotSay, result.Verdict);
        var needed = result.PassesNeeded!.Value;
        Assert.True(result.PowerAt(needed, 0.1) >= 0.8);
        Assert.True(result.PowerAt(needed - 1, 0.1) < 0.8);
        Assert.Equal(needed - 6, result.MorePasses);
        // For normal deviates known without error n = 2·(1.645 + 0.842)²·s²/ln²(1.1); the model's t needs one or two more. s is what six passes in
        // each drive, their speeds lying as they do, leave of the change: its error is √(2/6)·s, no less than by equal speeds.
        var spread = result.Pooled!.StandardError * Math.Sqrt(6.0 / 2.0);
        Assert.InRange(spread, result.Scatter, 1.2 * result.Scatter);
        var plain = 2.0 * Math.Pow((1.645 + 0.842) * spread / Math.Log(1.1), 2.0);
        Assert.InRange(needed, plain, plain + 2.5);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_doubt_that_all_passes_share_asks_for_passes_until_no_number_shows_the_change(int looks)
    {
        var settings = new ComparisonSettings { Looks = looks };
        BeforeAfter With(double common) =>
            BeforeAfter.Of([.. Passes("hump", 6, 0.10), .. Passes("hump", 6, 0.10, isAfter: true)], settings, common);
        var free = With(0.0);

        // However many the passes, their doubt stays: by normal deviates a change is found four times of five where ln(1.1)/c is above 1.645 + 0.842,
        // 1.960 + 0.842 where each look is of 95 %.
        var edge = Math.Log(1.1) / ((looks == 1 ? 1.6449 : 1.9600) + 0.8416);
        foreach (var (part, isShown, isHeld, isBeyond) in new[]
        {
            (0.0, true, false, false), (0.2, true, false, false), (0.8, true, true, false), (0.98, false, true, false), (1.002, false, true, true),
        })
        {
            var result = With(part * edge);
            Assert.Equal(free.PassesNeeded, result.PassesByScatter);
            Assert.Equal((isShown, isHeld, isBeyond), (result.PassesNeeded is not null, result.IsHeldByShared, result.IsBeyondPasses));
            Assert.Equal(1.6449 * part * edge, result.SharedHalfWidth, 1e-4);
            Assert.Equal(isBeyond, result.PowerAt(10_000_000, 0.1) < 0.8);
        }
    }

    [Theory]
    [InlineData(0.10, 0.6)]
    [InlineData(0.10, 0.8)]
    [InlineData(0.06, 0.9)]
    public void Passes_named_beside_a_doubt_that_all_share_find_the_change_four_times_of_five_drawn_at_random(double scatter, double part)
    {
        var common = part * Math.Log(1.1) / (1.6449 + 0.8416);
        var result = BeforeAfter.Of([.. Passes("hump", 6, scatter), .. Passes("hump", 6, scatter, isAfter: true)], null, common);
        var (plain, needed) = (BeforeAfter.Of([.. result.Counted]).Pooled!.StandardError, result.PassesNeeded!.Value);

        // The change is found where it lies above Student's t times its error: the scatter of 2n passes less their three coefficients is estimated
        // from them (a mean of squares of normal deviates), the doubt of the records is known.
        var (own, freedom) = (plain * Math.Sqrt(6.0 / needed), (2 * needed) - 3);
        var limit = LeastSquares.Student(freedom, 0.9);
        const int days = 20_000;
        var found = 0;
        var draw = 0UL;
        for (var day = 0; day < days; day++)
        {
            var (first, second) = SplitMix.Normals(5UL, draw);
            draw += 2;
            var change = Math.Log(1.1) + (own * first) + (common * second);
            var squares = 0.0;
            for (var k = 0; k < freedom; k += 2)
            {
                var (a, b) = SplitMix.Normals(5UL, draw);
                draw += 2;
                squares += (a * a) + (k + 1 < freedom ? b * b : 0.0);
            }

            found += change > limit * Math.Sqrt((own * own * squares / freedom) + (common * common)) ? 1 : 0;
        }

        // Three standard deviations of the draws, and what one pass more tells.
        Assert.InRange((double)found / days, 0.8 - 0.0085, 0.8 + 0.0085 + (result.PowerAt(needed, 0.1) - result.PowerAt(needed - 1, 0.1)));
    }

    [Fact]
    public void Where_no_named_number_shows_what_matters_no_number_is_said_to_settle_it()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 6, 0.6), .. Passes("hump", 6, 0.6, isAfter: true)]);
        Assert.Equal((ComparisonVerdict.CannotSay, null, null), (result.Verdict, result.PassesNeeded, result.MorePasses));
    }

    [Fact]
    public void Where_there_are_enough_for_what_matters_those_that_settle_the_change_as_it_stands_are_named()
    {
        // Twelve passes show a tenth, and the change lies between nothing and that: its interval holds both.
        var result = BeforeAfter.Of(
        [
            .. Enumerable.Range(1, 24).Select(i => new ComparedPass
            {
                Site = "hump", Speed = 6.0, Value = Math.Exp((i % 2 == 0 ? 0.08 : -0.08) + (i > 12 ? 0.05 : 0.0)), IsAfter = i > 12, Number = i,
            }),
        ]);
        Assert.Equal(ComparisonVerdict.CannotSay, result.Verdict);
        Assert.True(result.PassesNeeded <= 12);
        var more = result.MorePasses!.Value;
        double Half(int each) =>
            LeastSquares.Student((2 * each) - 2, 0.9) * result.Scatter * Math.Sqrt(2.0 / each);
        var log = Math.Abs(result.Pooled!.Log);
        bool IsSettled(double half) => half < log || (Math.Exp(log + half) <= 1.1 && Math.Exp(-log - half) >= 0.9);
        Assert.True(IsSettled(Half(12 + more)));
        Assert.False(IsSettled(Half(12 + more - 1)));
    }

    [Fact]
    public void Two_looks_widen_the_interval()
    {
        List<ComparedPass> passes = [.. Passes("hump", 8, 0.05), .. Passes("hump", 8, 0.05, isAfter: true)];
        var (once, twice) = (BeforeAfter.Of(passes), BeforeAfter.Of(passes, new ComparisonSettings { Looks = 2 }));
        Assert.Equal(LeastSquares.Student(once.Pooled!.Freedom, 0.95) / LeastSquares.Student(once.Pooled.Freedom, 0.9),
            twice.Pooled!.HalfWidth / once.Pooled.HalfWidth, 1e-12);
    }

    [Fact]
    public void Neither_the_order_of_passes_nor_the_unit_of_their_number_matters()
    {
        List<ComparedPass> passes =
        [
            .. Passes("hump", 8, 0.05, kind: "hump"), .. Passes("joint", 5, 0.05, kind: "edge"),
            .. Passes("hump", 7, 0.05, change: -0.1, kind: "hump", isAfter: true),
            .. Passes("joint", 6, 0.05, change: -0.1, kind: "edge", isAfter: true),
        ];
        var plain = BeforeAfter.Of(passes);
        var turned = BeforeAfter.Of([.. passes.AsEnumerable().Reverse().Select(p => p with { Value = 57.3 * p.Value, Speed = 3.6 * p.Speed })]);
        Assert.Equal(plain.Pooled!.Log, turned.Pooled!.Log, 1e-10);
        Assert.Equal(plain.Pooled.HalfWidth, turned.Pooled.HalfWidth, 1e-10);
        Assert.Equal(plain.ApartProbability!.Value, turned.ApartProbability!.Value, 1e-9);
        Assert.Equal(plain.Power, turned.Power, 1e-9);
        Assert.Equal(plain.Verdict, turned.Verdict);
    }

    [Fact]
    public void Both_lines_lie_the_change_apart_and_hold_the_fitted_level()
    {
        var result = BeforeAfter.Of([.. Passes("hump", 8, 0.02), .. Passes("hump", 8, 0.02, change: -0.15, isAfter: true)]);
        var (before, after) = (result.Level("hump", 6.1, false)!.Value, result.Level("hump", 6.1, true)!.Value);
        Assert.Equal(1.0 + result.Pooled!.Value, after.Value / before.Value, 1e-12);
        Assert.InRange(before.Value, before.Low, before.High);
        Assert.Null(result.Level("joint", 6.1, false));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_number_without_a_logarithm_is_refused(double value) =>
        Assert.Throws<RefusedValueException>(() => new ComparedPass { Site = "hump", Speed = 6.0, Value = value, IsAfter = false, Number = 1 });

    /// <summary>A number that grows with speed and scatters by seeded normal draws.</summary>
    internal static IEnumerable<ComparedPass> Passes(
        string site,
        int count,
        double scatter,
        double speed = 6.0,
        double spread = 0.06,
        double growth = 1.0,
        double change = 0.0,
        bool isAfter = false,
        string kind = "", double level = 1.0)
    {
        var seed = SplitMix.At(SplitMix.At(11UL, isAfter ? 1UL : 2UL), (ulong)site.Sum(c => c));
        for (var i = 0; i < count; i++)
        {
            var (first, second) = SplitMix.Normals(seed, (ulong)(2 * i));
            var v = speed * Math.Exp(spread * first);
            yield return new ComparedPass
            {
                Site = site,
                Kind = kind,
                Speed = v,
                Value = 0.02 * level * Math.Pow(v / 6.0, growth) * (1.0 + change) * Math.Exp(scatter * second),
                IsAfter = isAfter,
                Number = i + 1,
            };
        }
    }
}
