using Heaveline.Drives.Comparison;
using Heaveline.Figures;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Comparison;

namespace Heaveline.Tests.Studies;

public class ProveWordsTests
{
    [Fact]
    public void Drives_at_other_speeds_have_no_verdict_and_both_speeds_are_said()
    {
        var said = Said(Passes("hump", 8, 0.02, speed: 5.0), Passes("hump", 8, 0.02, speed: 8.5, isAfter: true));
        Assert.StartsWith("The two drives were not driven alike: hump before from ", said, StringComparison.Ordinal);
        Assert.EndsWith("0 passes before and 0 after are at speeds of both. No verdict.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_passes_are_counted() => Assert.Equal(
        "Too few passes over bumps that both drives crossed: 3 before, 9 after; 4 in each drive are the least. No verdict.",
        Said(Passes("hump", 3, 0.02), Passes("hump", 9, 0.02, isAfter: true).Concat(Passes("joint", 5, 0.02, isAfter: true))));

    [Fact]
    public void No_pass_at_all_is_too_few_and_has_figures_too()
    {
        Assert.StartsWith("Too few passes", Said([], []), StringComparison.Ordinal);
        var nothing = BeforeAfter.Of([]);
        Assert.Single(BeforeAfterFigure.Of(nothing, "RMS pitch in the second after the bump", In.Degrees, "No verdict.").Panels);
        var power = PowerFigure.Of(nothing, "RMS pitch in the second after the bump");
        Assert.Contains("nothing is compared yet; one pass is taken to scatter by 8.0 %", power.Caption, StringComparison.Ordinal);
        Assert.Empty(((ChartPanel)power.Panels[0]).Marks);
    }

    [Fact]
    public void A_change_that_hides_in_the_speed_is_said() => Assert.StartsWith(
        "No verdict: in each drive all passes had nearly one speed, and not the same",
        Said(Passes("hump", 6, 0.02, speed: 6.0, spread: 0.0), Passes("hump", 6, 0.02, speed: 6.1, spread: 0.0, isAfter: true)),
        StringComparison.Ordinal);

    [Fact]
    public void What_cannot_be_said_yet_asks_for_so_many_passes()
    {
        var said = Said(Passes("hump", 6, 0.10), Passes("hump", 6, 0.10, isAfter: true));
        Assert.StartsWith(
            "It cannot be said yet whether it worked at hump: pitch in the second after it changed by ", said, StringComparison.Ordinal);
        Assert.Matches(@"6 passes before, 6 after\. \d+ passes? more in each drive would show 10 % four times of five\.$", said);
    }

    [Fact]
    public void Where_one_drive_has_more_passes_than_the_other_each_is_asked_for_what_it_lacks()
    {
        var said = Said(Passes("hump", 8, 0.10), Passes("hump", 6, 0.10, isAfter: true));
        var numbers = System.Text.RegularExpressions.Regex.Match(
            said,
            @"8 passes before, 6 after\. (\d+) passes in each drive, (\d+) more before and (\d+) more after, would show 10 % four times of five\.$");
        Assert.True(numbers.Success, said);
        int Number(int k) => int.Parse(numbers.Groups[k].Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal((Number(1), Number(1)), (8 + Number(2), 6 + Number(3)));
    }

    [Fact]
    public void A_change_is_echoed_with_the_digits_that_it_was_given_with()
    {
        Assert.Equal(
            "front springs +20 %, rear springs +12.5 %, rear dampers −3.25 %",
            ScaledWords.Said(new() { FrontSprings = 1.0 + (20.0 / 100.0), RearSprings = 1.0 + (12.5 / 100.0), RearDampers = 1.0 + (-3.25 / 100.0) }));
    }

    [Theory]
    [InlineData(0.10, 0.031)]
    [InlineData(0.10, 0.0376)]
    [InlineData(0.10, 0.05)]
    [InlineData(0.60, 0.05)]
    public void Where_the_speed_records_are_in_the_way_it_is_said_and_what_helps(double scatter, double common)
    {
        BeforeAfter Of(double shared) =>
            BeforeAfter.Of([.. Passes("hump", 6, scatter), .. Passes("hump", 6, scatter, isAfter: true)], null, shared);
        var (free, held) = (Of(0.0), Of(common));
        Assert.EndsWith(
            free.PassesNeeded is { } few ? $" as these. {few} passes in each drive would show it four times of five."
                : " as these. More than 200 passes in each drive would be needed to show it four times of five.",
            Assert.Single(ProveWords.Power(free)), StringComparison.Ordinal);
        var open = "what the speed records of the two drives leave open moves the change by ± "
            + $"{Numeral.Of(100.0 * (Math.Exp(1.6449 * common) - 1.0), 1)} % by itself";

        // ln(1.1)/(1.645 + 0.842) = 0.0383: from there on no number does.
        var asked = common > 0.0383 ? "No number of passes as these would show it"
            : held.PassesNeeded is { } count ? $"{count} passes in each drive would show it"
            : "More than 200 passes in each drive would be needed to show it";
        var alone = free.PassesNeeded is { } plain ? $"{plain} passes" : "more than 200 passes";
        Assert.Contains(
            $" as these. {asked} four times of five: {open}, however many they are. Were the records beyond doubt, {alone} in each drive would. "
                + "A better speed record helps, and more bumps, ",
            Assert.Single(ProveWords.Power(held)), StringComparison.Ordinal);
        Assert.EndsWith(
            held.PassesNeeded is { } needed
                ? $"6 after. {needed - 6} passes more in each drive would show 10 % four times of five: {open}."
                : $"6 after. More passes alone will not settle it: {open}.",
            ProveWords.Verdict(new ProvedNumber(ComparedNumber.Headline, held)), StringComparison.Ordinal);
    }

    [Fact]
    public void Opposite_answers_are_told_bump_by_bump()
    {
        var said = Said(
            Passes("hump", 8, 0.02).Concat(Passes("joint", 8, 0.02)),
            Passes("hump", 8, 0.02, change: -0.2, isAfter: true).Concat(Passes("joint", 8, 0.02, change: 0.25, isAfter: true)));
        Assert.Matches(@"^It did not do the same everywhere: .* at hump it fell by .*; at joint it rose by ", said);
    }

    [Fact]
    public void Speeds_turn_for_a_reader_of_imperial_units()
    {
        var said = Imperial.Text(Said(Passes("hump", 8, 0.02), Passes("hump", 8, 0.02, change: -0.2, isAfter: true)));
        Assert.Contains(" mph, 8 passes before", said, StringComparison.Ordinal);
        Assert.DoesNotContain("km/h", said, StringComparison.Ordinal);
    }

    /// <summary>400 seeded pairs of drives, from no change to half: sentence, table and figures are there, and say the same number.</summary>
    [Fact]
    public void Sentence_table_and_figures_agree_for_any_pair_of_drives()
    {
        HashSet<ComparisonVerdict> met = [];
        for (var k = 0; k < 400; k++)
        {
            double At(ulong i) => SplitMix.Uniform(99UL, (ulong)(8 * k) + i);
            var scatter = 0.01 + (0.15 * At(0));
            var change = At(1) < 0.3 ? 0.0 : 0.6 * (At(1) - 0.65);
            var second = At(2) < 0.3;
            int Count(ulong i) => 2 + (int)(10.0 * At(i));
            var result = BeforeAfter.Of(
            [
                .. Passes("hump", Count(3), scatter), .. Passes("hump", Count(4), scatter, speed: 6.0 + (2.0 * At(5)), change: change, isAfter: true),
                .. second ? Passes("joint", 4, scatter) : [], .. second ? Passes("joint", 4, scatter, change: -change, isAfter: true) : [],
            ]);
            met.Add(result.Verdict);
            var proved = new ProvedNumber(ComparedNumber.Headline, result);
            var said = ProveWords.Verdict(proved);
            var table = ProveTable.Of(proved);
            if (result.Pooled is null)
            {
                Assert.Contains("o verdict", said, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain(table.Rows, r => r.Key == "prove-change");
                Assert.NotEmpty(BeforeAfterFigure.Of(result, proved.Title, proved.Unit, said).Panels);
                Assert.NotEmpty(PowerFigure.Of(result, proved.Title).Panels);
                continue;
            }

            if (result.Verdict != ComparisonVerdict.SitesDiffer)
            {
                var printed = Numeral.Of(Math.Abs(In.Percent.Of(result.Pooled.Value)), 1);
                Assert.Contains(printed, said, StringComparison.Ordinal);
                Assert.Equal(In.Percent.Of(result.Pooled.Value), table.Rows.Single(r => r.Key == "prove-change").Values[0]!.Value, 1e-12);
            }

            Assert.NotEmpty(BeforeAfterFigure.Of(result, proved.Title, proved.Unit, said).Panels);
            Assert.NotEmpty(PowerFigure.Of(result, proved.Title).Panels);
        }

        Assert.Superset(
            new HashSet<ComparisonVerdict>
            {
                ComparisonVerdict.TooFew, ComparisonVerdict.NotAlike, ComparisonVerdict.Worked, ComparisonVerdict.Worse,
                ComparisonVerdict.NoDifference,
                ComparisonVerdict.CannotSay, ComparisonVerdict.SitesDiffer,
            },
            met);
    }

    private static ReaderUnits Imperial => ReaderUnits.Of("imperial");

    private static string Said(IEnumerable<ComparedPass> before, IEnumerable<ComparedPass> after) =>
        ProveWords.Verdict(new ProvedNumber(ComparedNumber.Headline, BeforeAfter.Of([.. before, .. after])));

    private static IEnumerable<ComparedPass> Passes(
        string site, int count, double scatter, double speed = 6.0, double spread = 0.06, double change = 0.0, bool isAfter = false) =>
        BeforeAfterTests.Passes(site, count, scatter, speed, spread, change: change, isAfter: isAfter);
}
