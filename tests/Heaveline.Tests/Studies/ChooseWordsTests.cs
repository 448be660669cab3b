using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Files.Parts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Search;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>What a choice says of its limits, its doubts and its price.</summary>
public partial class ChooseWordsTests
{
    private static readonly ChooseAnswer Answer =
        ChooseStudy.Run(VillageParts.Asked with { Draws = 16, DrivenWhole = 1600 }, new StudyRun { Degree = 2 });

    private static ChooseFindings Findings => Answer.Findings;

    [Fact]
    public void Lists_of_two_currencies_have_no_sum_and_are_refused()
    {
        var yen = VillageParts.List with
        {
            Name = "far list",
            Currency = "YEN",
            Parts = [.. VillageParts.List.Parts.Select(part => part with { Price = new Money(part.Price!.Value.Value, "YEN") })],
        };
        var refused = Assert.Throws<RefusedValueException>(() => ChooseStudy.Run(VillageParts.Asked with { Lists = [VillageParts.List, yen] }));
        Assert.Contains("EUR and YEN", refused.Message, StringComparison.Ordinal);
        Assert.Contains("Write both lists in one currency", refused.Message, StringComparison.Ordinal);
        Assert.Null(ChooseLists.Against([VillageParts.List]));
    }

    [Fact]
    public void Fair_shares_add_up_as_they_are_printed()
    {
        var whole = Findings.List[0].Entry.Tried.Stated.Wishes[0] - 1.0;
        for (var k = 1; k < 30; k++)
        {
            var (one, other) = (whole * k / 67.0, whole * k / 61.0);
            var said = new ChooseWords(Findings with { Shares = [(0, one), (1, other), (0, whole - one - other)] })
                .Reasons.Single(s => s.Id == "shares").Text;
            decimal[] numbers =
            [
                .. Percent().Matches(said).Select(match => decimal.Parse(
                    match.Groups[1].Value.Replace('\u2212', '-'), NumberStyles.Float, CultureInfo.InvariantCulture)),
            ];
            Assert.Equal(4, numbers.Length);
            Assert.Equal(numbers[0], Math.Abs(numbers[1] + numbers[2] + numbers[3]));
        }
    }

    [GeneratedRegex(@"([-+\u2212]?[0-9]+[.][0-9]) %")]
    private static partial Regex Percent();

    [Fact]
    public void Parts_of_one_name_in_two_lists_are_told_apart_by_their_list()
    {
        var other = VillageParts.List with { Name = "other list", Parts = [VillageParts.Spring("Alder F-17", 16_000.0, AxleEnd.Front, 60m)] };
        string[] names = [.. PartsLists.Apart([VillageParts.List, other]).SelectMany(list => list.Parts).Select(part => part.Name)];
        Assert.Contains("Alder F-17 of 'small list'", names);
        Assert.Contains("Alder F-17 of 'other list'", names);
        Assert.Contains("Alder F-19", names);
        Assert.NotNull(ChooseLists.Against([VillageParts.List, VillageParts.List]));
    }

    [Fact]
    public void A_spring_of_unknown_length_is_worth_buying_on_a_condition_alone()
    {
        Assert.NotEmpty(Findings.List);
        Assert.All(Findings.List.Zip(Answer.Shortlist), one =>
        {
            var springs = one.First.Fitted.Parts.Where(part => part.Place.Sort() == PartSort.Spring).Select(part => part.Option.Name).ToArray();
            Assert.Equal(springs.Length > 0, one.Second.Text.Contains("measure free-length", StringComparison.Ordinal));
            Assert.All(springs, name => Assert.Contains(name, one.Second.Text, StringComparison.Ordinal));
        });
        var fitted = (Fitted)Fitting.Of(
            VillageParts.Saloon, [new FittedPart(PartPlace.RearSpring, VillageParts.List.For(PartPlace.RearSpring).First().Options[0])]);
        Assert.StartsWith(", only if Alder R-42 stays in its seats", ChooseSprings.Condition(fitted, VillageParts.Asked), StringComparison.Ordinal);

        // The list says how long this one is, the car file not how long its own is: the height is kept, and with it the spring's seat.
        var village = PartsFile.Load(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml")).Value!;
        var kept = (Fitted)Fitting.Of(
            VillageParts.Saloon, [new FittedPart(PartPlace.RearSpring, village.Parts.Single(part => part.Name == "Larch R-600").Options[0])]);
        Assert.StartsWith(", only if Larch R-600 stays in its seats", ChooseSprings.Condition(kept, VillageParts.Asked), StringComparison.Ordinal);
    }

    [Fact]
    public void No_caution_is_said_twice()
    {
        string[] all = [.. Answer.Sentences.Select(s => s.Text)];
        Assert.Equal(all.Distinct(), all);
    }

    [Fact]
    public void Setups_that_are_no_choice_add_up_in_one_unit()
    {
        Assert.True(Findings.Found.AreSilentChosen);
        Assert.Equal(Findings.Parts.Space.LoudCount, Findings.Found.Within + Findings.Found.RefusedStanding.Values.Sum());
        var said = Answer.Sentences.Single(s => s.Id == "refused").Text;
        var sum = Counted().Matches(said).Sum(one => int.Parse(one.Groups[1].Value, CultureInfo.InvariantCulture));
        Assert.StartsWith(
            FormattableString.Invariant($"No choice, {sum} of {Findings.Parts.Space.LoudCount} setups"), said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_hardest_hit_and_the_worst_seat_stand_in_the_table_and_by_the_setup() => Assert.All(Findings.List.Zip(Answer.Shortlist), one =>
    {
        var (row, scores) = (one.First.Entry.Tried.Stated.Row, Findings.Found.Scores);
        var hit = scores.Counted.Where(c => c.Kind == WishKind.Hit).Max(c => UseScores.Ratio(c, row, Findings.Found.Present));
        Assert.Equal(hit, one.First.Harder.Hit!.Value.Ratio);
        var most = Math.Max(hit, one.First.Harder.Seat!.Value.Ratio);
        Assert.Equal(most > 1.05, one.Second.Text.Contains("; but in '", StringComparison.Ordinal));
        Assert.Contains(Answer.ShortTables.SelectMany(t => t.Rows), r => r.Key == "worst-seat");
    });

    [Fact]
    public void A_load_under_which_the_car_stands_on_its_stops_has_no_limit_of_roll()
    {
        var free = VillageParts.Saloon;
        var low = free with { Rear = free.Rear with { BumpStop = free.Rear.BumpStop! with { Clearance = new(0.01) } } };
        CarAtRest[] Rests(Car car) => [.. free.LoadStates.Select(load => new CarAtRest(RideModel.Of(car, load)))];
        var (before, after) = (Rests(low), Rests(free));
        Assert.Contains(after.Zip(before), one =>
            one.First.SideEffects.Roll!.WithTyres < one.Second.SideEffects.Roll!.WithTyres / 1.1);
        var standing = new ChooseStanding(new ChooseLimits { LampSwing = 1.0 }, before);
        Assert.NotEmpty(standing.OnStops);
        Assert.Equal(ChooseRefusal.None, standing.Against(after));
        Assert.Empty(new ChooseStanding(new ChooseLimits(), after).OnStops);
    }

    [Fact]
    public void Rings_of_the_figure_are_setups_that_the_draws_do_not_bear_out()
    {
        var panel = Assert.IsType<ChartPanel>(Assert.Single(Answer.Figure(ChooseAnswer.TradeOff).Panels));
        var shaky = Findings.Trial.Tried.Skip(1).Count(one => one.Stated.IsAllowed && !Shortlist.Keeps(one, Findings.Found.Task.Limits));
        Assert.Equal(shaky, panel.Marks.Count(mark => mark.Symbol == MarkSymbol.Ring));
    }

    [Fact]
    public void No_sentence_of_the_answer_speaks_of_an_option_of_the_command() =>
        Assert.DoesNotContain(Answer.Sentences, s => s.Text.Contains("--", StringComparison.Ordinal));

    [Fact]
    public void What_gains_and_fails_a_limit_in_the_drawn_cars_is_not_said_to_gain_too_little()
    {
        // A limit that holds in the car as stated alone.
        var stated = Findings.Found.Present;
        var limit = new SetupLimit(WishKind.Hit, "never in a drawn car", 0.9, (_, present) => ReferenceEquals(present, stated) ? -1.0 : 1.0);
        var found = Findings.Found with { Task = Findings.Found.Task with { Limits = [limit] } };
        var trial = SetupTrial.Of(found, Shortlist.Candidates(found), 10, null);
        Assert.Empty(Shortlist.Of(trial));
        Assert.Contains(trial.Tried.Skip(1), one => one.Ninth(0) <= 1.0 - Shortlist.Felt);
        var finding = new ChooseWords(Findings with { Found = found, Trial = trial, List = [] }).Finding.Text;
        Assert.StartsWith("Leave it as it is: what takes 5 % or more off the settling", finding, StringComparison.Ordinal);
        Assert.Contains("'never in a drawn car' holds in 0 of", finding, StringComparison.Ordinal);
        Assert.Contains("the 8 drawn cars after which it was sure enough", finding, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_what_may_be_chosen_gains_nothing_it_is_not_said_that_nothing_may_be_chosen()
    {
        var found = Findings.Found with { Front = [Findings.Found.AsItIs] };
        string Finding(FoundSetups of) => new ChooseWords(Findings with { Found = of, List = [] }).Finding.Text;
        Assert.Contains(found.Driven, one => one.Setup != 0L && one.IsAllowed);
        Assert.StartsWith("Leave it as it is: no setup that may be chosen settles better.", Finding(found), StringComparison.Ordinal);
        Assert.StartsWith(
            "Leave it as it is: no setup may be chosen within the limits.",
            Finding(found with { Driven = [found.AsItIs] }),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_that_is_printed_with_an_end_of_nothing_is_the_same_and_one_printed_alike_is_one_number()
    {
        var side = new ChooseSide(Findings.Sides[0].Measure, "key", "label", 1.0, []);
        var digit = Math.Pow(10.0, -side.Measure.Digits) / side.Measure.Unit.Of(1.0);
        ChooseSide Of(double low, double high) =>
            side with { Changes = [new ChooseChange(0.0, 0.5 * (low + high) * digit, 0.5 * (high - low) * digit, 32)] };
        Assert.True(Of(-4.0, -0.2).Changes[0].IsTold);
        Assert.False(Of(-4.0, -0.2).IsTold(0));
        Assert.True(Of(-4.0, -1.0).IsTold(0));
        Assert.EndsWith(" in all", Of(0.9, 1.1).Words(0), StringComparison.Ordinal);
        Assert.Contains(" to ", Of(1.0, 3.0).Words(0), StringComparison.Ordinal);
    }

    [Fact]
    public void Springs_stand_by_their_rate_whatever_their_length_and_stops_have_no_order()
    {
        // The softest is the longest.
        var rates = new[] { 17_000.0, 19_000.0, 23_000.0 };
        CoilPart[] springs =
        [
            .. rates.Select((rate, k) => VillageParts.Spring($"Alder {k}", rate, AxleEnd.Front, 70m) with { FreeLength = new(0.42 - (0.02 * k)) }),
        ];
        var asked = VillageParts.Asked with { Lists = [VillageParts.List with { Parts = [.. springs] }], Open = [PartPlace.FrontSpring] };
        var place = Assert.Single(new ChooseParts(asked).Space.Places);
        var order = place.FromSoftToFirm();
        Assert.Equal(place.Options.Length, order.Length);
        var own = VillageParts.Saloon.Front.Spring.Law.MeanRate!.Value;
        Assert.Equal([.. rates.Append(own).Order()], order.Select(k => place.Options[k].Strength!.Value));
        var stops = new OpenPlace("front stop", [new SetupOption("as it is", 0.0), new SetupOption("longer", 20.0)]);
        Assert.Empty(stops.FromSoftToFirm());
    }

    [Fact]
    public void Where_a_link_joins_front_and_rear_bars_are_driven_as_all_else_is()
    {
        var joined = VillageParts.Saloon with { Interconnection = new ElasticLink { Rate = new(2_000.0), Damping = new(0.0) } };
        Assert.All(new ChooseParts(VillageParts.Asked with { Car = joined }).Space.Places, place => Assert.False(place.IsSilent));
        Assert.Contains(new ChooseParts(VillageParts.Asked).Space.Places, place => place.IsSilent);
    }

    [Fact]
    public void A_step_aside_is_judged_as_the_search_judged_it() => Assert.All(Findings.Aside, one =>
    {
        if (Findings.Found.Driven.FirstOrDefault(other => other.Setup == one.Setup.Setup) is { IsAllowed: false } before)
        {
            Assert.Equal(before.Refusal, one.Setup.Refusal);
        }
    });

    [GeneratedRegex(@"\((\d+)\)(?=;|\.$)")]
    private static partial Regex Counted();
}
