using Heaveline.Drives.Comparison;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives.Comparison;

/// <summary>
/// 600 planted pairs a cell over class B, seeded: the level is 10 %, whose binomial standard deviation is 1.2 %. The long run over four roads is
/// in bench/runs.
/// </summary>
public class PlantedComparisonTests
{
    private const int Pairs = 600;

    private static readonly PlantedComparisons Planted = new(new PlantedHumps(64e-6, 0.05, 0.3), 300);

    [Theory]
    [InlineData(6, 1, 0.0)]
    [InlineData(8, 1, 0.0)]
    [InlineData(8, 1, 0.4)]
    [InlineData(2, 4, 0.0)]
    public void Drives_between_which_nothing_was_changed_raise_ten_alarms_in_a_hundred(int each, int sites, double tilt) =>
        Assert.InRange(Planted.Of(Pairs, each, sites, isChanged: false, tilt).Alarms, 0.07, 0.13);

    /// <summary>Prototype of this analysis, other seeds: 89 % at 6 passes each, 96 % at 8; four humps, twice each, 93 to 99 %.</summary>
    [Theory]
    [InlineData(6, 1, 0.84, 0.94)]
    [InlineData(8, 1, 0.91, 1.00)]
    [InlineData(2, 4, 0.88, 1.00)]
    public void Firmer_dampers_are_found_as_often_as_reckoned(int each, int sites, double least, double most) =>
        Assert.InRange(Planted.Of(Pairs, each, sites, isChanged: true).Falls, least, most);

    [Fact]
    public void The_interval_holds_the_planted_change_nine_times_of_ten()
    {
        var score = Planted.Of(Pairs, 6, 1, isChanged: true);
        Assert.InRange(score.Covered, 0.87, 0.94);
        Assert.InRange(score.Scatter, 0.05, 0.085);
        Assert.InRange(score.Judged, 0.98, 1.0);
    }

    /// <summary>The chance of a verdict that the program states for passes yet to be driven, against what happens with as many.</summary>
    [Fact]
    public void The_power_that_is_stated_is_the_power_that_comes()
    {
        var fall = 1.0 - Math.Exp(Planted.Truth.Average());
        List<double> stated = [];
        for (var site = 0; site < 4; site++)
        {
            var humps = new PlantedHumps(64e-6, 0.05, 0.3);
            var result = BeforeAfter.Of(
                [.. humps.Passes(PlantedHumps.Before, site, 30, 8, false), .. humps.Passes(PlantedHumps.Before, site, 30, 9, true)]);
            // The chance of a fall by f is that of a rise by 1/(1 − f) − 1: the same distance of logarithms.
            stated.Add(result.PowerAt(6, (1.0 / (1.0 - fall)) - 1.0));
        }

        Assert.Equal(Planted.Of(Pairs, 6, 1, isChanged: true).Falls, stated.Average(), 0.05);
    }

    /// <summary>Eight passes a drive judged, and four more added where nothing could be said: both looks together stay within the level.</summary>
    [Fact]
    public void Two_looks_raise_no_more_alarms_than_one()
    {
        var humps = new PlantedHumps(64e-6, 0.05, 0.3);
        var (before, after) = (humps.Passes(PlantedHumps.Before, 1, 300, 21, false), humps.Passes(PlantedHumps.Before, 1, 300, 22, true));
        var settings = new ComparisonSettings { Looks = 2 };
        var alarms = 0;
        for (var pair = 0; pair < Pairs; pair++)
        {
            var (b, a) = (
                PlantedHumps.Drawn(before, 12, 0.0, SplitMix.At(31, (ulong)pair)), PlantedHumps.Drawn(after, 12, 0.0, SplitMix.At(32, (ulong)pair)));
            bool IsAlarm(int each) =>
                BeforeAfter.Of([.. b.Take(each), .. a.Take(each)], settings).Pooled is { } effect && effect.Low * effect.High > 0.0;
            alarms += IsAlarm(8) || IsAlarm(12) ? 1 : 0;
        }

        Assert.InRange(alarms / (double)Pairs, 0.03, 0.12);
    }
}
