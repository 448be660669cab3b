using System.Globalization;
using Heaveline.Cars;
using Heaveline.Parts;
using Heaveline.Search;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class ChooseStudyTests
{
    private static readonly ChooseAnswer Answer = ChooseStudy.Run(VillageParts.Asked, new StudyRun { Degree = 2 });

    private static ChooseFindings Findings => Answer.Findings;

    [Fact]
    public void A_small_list_cures_the_saloon_and_every_setup_was_driven()
    {
        Assert.True(Findings.Found.IsWhole);
        Assert.NotEmpty(Findings.List);
        Assert.StartsWith("Worth buying: A, ", Answer.Finding.Text, StringComparison.Ordinal);
        Assert.Contains(Answer.Sentences, s => s.Id == "search" && s.Text.StartsWith("Every one of the ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_shortlist_keeps_every_limit_in_nine_of_ten_drawn_cars_and_gains_what_is_felt() => Assert.All(Findings.List, one =>
    {
        var tried = one.Entry.Tried;
        Assert.True(tried.IsClean(SetupTrial.CleanShare));
        Assert.All(Findings.Found.Task.Limits.Index(), limit => Assert.True(tried.Keeps(limit.Index, limit.Item.Share)));
        Assert.True(tried.Ninth(0) <= 0.95);
        Assert.True(tried.Stated.IsAllowed);
    });

    [Fact]
    public void No_allowed_setup_beats_one_of_the_front() => Assert.All(Findings.Found.Front, one => Assert.DoesNotContain(
        Findings.Found.Driven.Where(other => other.IsAllowed),
        other => SetupFront.Beats([.. other.Wishes, .. one.Wishes], one.Wishes.Length, 0, 1)));

    [Fact]
    public void The_car_as_it_is_comes_to_one_as_stated_and_in_every_draw()
    {
        Assert.All(Findings.Found.AsItIs.Wishes.Take(3), wish => Assert.Equal(1.0, wish));
        Assert.All(Findings.Trial.Tried[0].Wishes.SelectMany(w => w), wish => Assert.Equal(1.0, wish));
    }

    [Fact]
    public void Fair_shares_of_the_changes_add_up_to_the_gain()
    {
        // Of any setup with several changes, told as the best would be.
        var several = Findings.Trial.Tried.First(one => Findings.Parts.Space.Changed(one.Stated.Setup) >= 3);
        var told = new ChooseTold("A", new(several, [ShortlistReason.Best]), (Fitted)Findings.Parts.Fit(several.Stated.Setup), Findings.Full);
        var reasons = ChooseReasons.Of(
            Findings with { List = [told] }, new ChooseDoer(Findings.Asked, Findings.Use, Findings.Parts), StudyRun.Plain);
        Assert.Equal(Findings.Parts.Space.Changed(several.Stated.Setup), reasons.Shares.Length);
        Assert.Equal(several.Stated.Wishes[0] - 1.0, reasons.Shares.Sum(share => share.Part), 1e-9);
    }

    [Fact]
    public void What_a_setup_costs_is_two_of_each_part_and_one_bar()
    {
        var one = Findings.List[0];
        var sum = one.Fitted.Parts.Sum(part => (part.Place is PartPlace.FrontBar or PartPlace.RearBar ? 1 : 2) * part.Option.Price!.Value.Value);
        Assert.Equal(sum.ToString("0.##", CultureInfo.InvariantCulture) + " EUR", Answer.Prices[0]);
    }

    [Fact]
    public void A_budget_is_kept_and_what_is_cheaper_gains_no_more()
    {
        var cheap = ChooseStudy.Run(VillageParts.Asked with { Limits = new() { Cost = new Money(160m, "EUR") } }, new StudyRun { Degree = 2 });
        Assert.All(cheap.Findings.List, one => Assert.True(Findings.Parts.Space.Price(one.Entry.Setup) <= 160.0));
        Assert.Contains((int)ChooseRefusal.Cost, cheap.Findings.Found.RefusedStanding.Keys);
        if (!cheap.Findings.List.IsEmpty)
        {
            Assert.True(cheap.Findings.List[0].Entry.Tried.Ninth(0) >= Findings.List[0].Entry.Tried.Ninth(0));
        }
    }

    [Fact]
    public void Where_nothing_gains_the_car_is_left_as_it_is()
    {
        // One spring a per cent firmer than the one that is there.
        var list = VillageParts.List with { Parts = [VillageParts.Spring("Alder F-21", 20_900.0, AxleEnd.Front, 70m)] };
        var answer = ChooseStudy.Run(VillageParts.Asked with { Lists = [list], Draws = 16 });
        Assert.Empty(answer.Findings.List);
        Assert.StartsWith("Leave it as it is", answer.Finding.Text, StringComparison.Ordinal);
        Assert.Empty(answer.Prices);
        Assert.NotEmpty(answer.Lines);
    }

    [Fact]
    public void Threads_and_the_order_of_the_list_change_no_byte()
    {
        var small = VillageParts.Asked with
        {
            Draws = 10,
            Open = [PartPlace.FrontSpring, PartPlace.RearSpring],
        };
        var other = small with
        {
            Lists = [VillageParts.List with { Parts = [.. VillageParts.List.Parts.Reverse()] }],
            Roads = [.. small.Roads.Reverse()],
        };
        var json = ChooseStudy.Run(small).Json("1", "choose");
        Assert.Equal(json, ChooseStudy.Run(small, new StudyRun { Degree = 3 }).Json("1", "choose"));
        Assert.Equal(Numbers(json), Numbers(ChooseStudy.Run(other, new StudyRun { Degree = 2 }).Json("1", "choose")));

        // The roads stand in the order in which they were asked for; the numbers do not hang on it.
        static string Numbers(string text) => text[text.IndexOf("\"tables\"", StringComparison.Ordinal)..];
    }

    [Fact]
    public void A_search_that_drives_few_finds_what_driving_all_finds()
    {
        var few = ChooseStudy.Run(VillageParts.Asked with { DrivenWhole = 0 }, new StudyRun { Degree = 2 });
        Assert.False(few.Findings.Found.IsWhole);
        Assert.Equal(0, few.Findings.Found.Audit!.Missed);
        // Bars are not driven one and all: what is the least without another bar.
        var all = Findings.Found.Front.Where(one => one.Setup != 0L && few.Findings.Parts.Space.OptionAt(one.Setup, BarPlace) == 0)
            .Min(one => one.Wishes[0]);
        Assert.InRange(few.Findings.Found.Front.First(one => one.Setup != 0L).Wishes[0] / all, 0.999, 1.01);
    }

    private static int BarPlace => Findings.Parts.Places.IndexOf(PartPlace.FrontBar);

    [Fact]
    public void All_that_is_wrong_is_said_at_once()
    {
        var reading = ChooseStudy.Question.Read(
            KnownThings.Words(
                "car", "no car", "use", "hump fast", "use", "lump at 30 km/h", "open", "roof", "budget", "much", "with", "noise at most 3 %",
                "draws", "3"),
            new KnownThings(PlainCar.Saloon));
        Assert.Null(reading.Asked);
        Assert.Equal(
            ["budget", "car", "draws", "open", "parts", "use", "with"],
            reading.Objections.Select(o => o.Choice).Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_limit_given_twice_is_refused()
    {
        var known = new KnownThings(PlainCar.Saloon);
        string[] Said(params string[] words) => [.. ChooseStudy.Question.Read(KnownThings.Words(words), known).Objections.Select(o => o.Sentence)];
        Assert.Contains(
            Said("with", "hit at most 5 % more", "with", "roll at most 5 % more", "with", "hit at most 90 % more"),
            said => said.Contains("'hit at most 90 % more' is a second limit of hit", StringComparison.Ordinal));
        Assert.DoesNotContain(
            Said("with", "hit at most 5 % more", "with", "roll at most 5 % more"), said => said.Contains("second limit", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("load", "'driver' is given twice", "load", "driver", "load", "driver")]
    [InlineData("wish", "'hit' is wished twice", "wish", "hit", "wish", "hit")]
    [InlineData("keep", "'front bar' is kept twice", "keep", "front bar", "keep", "front bar")]
    [InlineData("use", "the speed '25000 m/h' twice", "use", "hump at 25 km/h, 25000 m/h")]
    [InlineData("use", "names the load 'driver' twice", "use", "hump at 25 km/h; loads driver, driver")]
    [InlineData("use", "it has a doubt, and what is driven is driven exactly so fast", "use", "hump at 25 km/h ± 3 km/h")]
    [InlineData("use", "speed ''", "use", "hump at 25 km/h, ")]
    public void What_stands_twice_or_says_nothing_is_refused_by_its_name(string choice, string said, params string[] words) => Assert.Contains(
        ChooseStudy.Question.Read(KnownThings.Words(["car", VillageParts.Saloon.Name, .. words]), new KnownThings(VillageParts.Saloon)).Objections,
        o => o.Choice == choice && o.Sentence.Contains(said, StringComparison.Ordinal));

    [Fact]
    public void More_crossings_than_anybody_asks_for_are_refused_with_their_count_and_the_bound()
    {
        var speeds = string.Join(", ", Enumerable.Range(0, 5000).Select(k => FormattableString.Invariant($"{10.0 + (0.01 * k):0.00} km/h")));
        string[] Said(string use) =>
        [
            .. ChooseStudy.Question
                .Read(KnownThings.Words("car", VillageParts.Saloon.Name, "use", use), new KnownThings(VillageParts.Saloon)).Objections
                .Where(o => o.Choice == "use").Select(o => o.Sentence),
        ];
        var loads = VillageParts.Saloon.LoadStates.Count;
        var one = Assert.Single(Said($"hump at {speeds}"));
        Assert.Contains(
            $"are {5000 * loads} crossings of each setup; at most {ChooseUseReader.MostCrossings} are driven", one, StringComparison.Ordinal);
        Assert.Contains("'hump' alone has 5000", one, StringComparison.Ordinal);
        Assert.Contains(Said($"class C at {speeds}"), said => said.Contains($"at most {ChooseUseReader.MostRides}", StringComparison.Ordinal));
        Assert.Empty(Said("hump at 25 km/h, 40 km/h"));
    }

    [Fact]
    public void What_is_printed_says_obstacle_load_speed_and_window()
    {
        var text = string.Join('\n', Answer.Lines);
        Assert.Contains("village-hump", text, StringComparison.Ordinal);
        Assert.Contains("25, 40 km/h", text, StringComparison.Ordinal);
        Assert.Contains("'four up with luggage'", text, StringComparison.Ordinal);
        Assert.Contains("first second after the rear wheels have left", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        TestContext.Current.TestOutputHelper?.WriteLine(text);
    }
}
