using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

public partial class DescribeNotesTests
{
    private static readonly Gen<DescribeAnswer> Answers = Gen.Select(AnyCar.Any, AnyCar.Loads, AnyCar.Loads)
        .Select((car, one, other) => car with { LoadStates = [one with { Name = "one" }, other with { Name = "other" }] })
        .Where(car => car.LoadStates.All(load => Stands(car, load)))
        .Select(car => DescribeStudy.Run(DescribeAsked.Of(car)));

    [Fact]
    public void What_is_said_of_the_load_rule_is_what_the_table_of_deflections_shows() => Answers.Sample(answer =>
    {
        var said = Said(answer, DescribeNotes.LoadRuleId);
        if (!answer.Models[0].Rolls)
        {
            return said is null;
        }

        var masses = answer.Models.Select(m => m.Body.Mass).ToList();
        var (lightest, heaviest) = masses[1] <= masses[2] ? (1, 2) : (2, 1);
        bool OnStop(int load) => answer.Models[load].Trim.BumpLeft.Any(left => left < 0.0);
        if (OnStop(lightest) || OnStop(heaviest))
        {
            Assert.Contains("stands on its bump stops", said, StringComparison.Ordinal);
            return true;
        }

        var numbers = Standing().Match(said!);
        Assert.True(numbers.Success, said);
        Assert.Equal(answer.Models[lightest].Load.Name, numbers.Groups["light"].Value);
        Assert.Equal(answer.Models[heaviest].Load.Name, numbers.Groups["heavy"].Value);
        double Row(string key, int load) => answer.Tables.SelectMany(t => t.Rows).Single(r => r.Key == key).Values[load]!.Value;
        foreach (var (load, group) in new[] { (lightest, "l"), (heaviest, "h") })
        {
            var share = Row("rear-deflection", load) / Row("front-deflection", load);
            var ratio = Row("rear-frequency-rigid-tyres", load) / Row("front-frequency-rigid-tyres", load);
            Assert.Equal(100.0 * share, Number(numbers, group), 0.5 + 1e-6);
            Assert.Equal(ratio, Number(numbers, group + "r"), 0.005 + 1e-6);
        }

        int Side(string group, double asked) => Math.Abs(Number(numbers, group) - asked) <= 3.0 ? 0 : Math.Sign(Number(numbers, group) - asked);
        static string Word(int side) => side switch
        {
            > 0 => "softer than the trade's load rule asks",
            < 0 => "stiffer than the trade's load rule asks",
            _ => "as the trade's load rule asks",
        };
        var (light, heavy) = (Side("l", 70.0), Side("h", 100.0));
        Assert.Contains(": " + Word(light), said, StringComparison.Ordinal);
        Assert.Contains(light == heavy ? " under both." : Word(heavy) + (heavy == 0 ? ", within 3 %" : "") + " under the second.", said);
        return true;
    }, iter: 60);

    [Fact]
    public void Two_loads_that_weigh_alike_are_two_loads()
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var driver = car.LoadStates.Single(l => l.Name == "driver");
        var answer = DescribeStudy.Run(DescribeAsked.Of(car with { LoadStates = [driver with { Name = "one" }, driver with { Name = "other" }] }));
        var said = Said(answer, DescribeNotes.LoadRuleId)!;
        Assert.DoesNotContain("the only load", said, StringComparison.Ordinal);
        Assert.Contains("under 'other'", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_that_presses_an_axle_onto_its_bump_stops_is_named_and_no_other() => Answers.Sample(answer =>
    {
        foreach (var model in answer.Models)
        {
            var named = answer.Sentences.Where(s => s.Text.StartsWith($"Under '{model.Load.Name}' the ", StringComparison.Ordinal))
                .Count(s => s.Id.Contains("-on-bump-stop-", StringComparison.Ordinal));
            Assert.Equal(Enumerable.Range(0, 4).Where(i => model.Trim.BumpLeft[i] < 0.0).Select(i => i / 2).Distinct().Count(), named);
        }

        return true;
    }, iter: 40);

    [Fact]
    public void Cost_and_doubt_of_a_car_on_its_bump_stops_say_so_and_of_no_other() => Answers.Sample(answer =>
    {
        foreach (var model in answer.Models)
        {
            var (car, isOn) = (LoadedCar.Of(model.Car, model.Load), model.Trim.BumpLeft.Any(left => left < 0.0));
            var cost = CostStudy.Run(new CostAsked { Cars = [car] }).Sentences;
            Assert.Equal(isOn, cost.Any(s => s.Id == "on-bump-stops"));
            // The first stop that is met says nothing of one that is left.
            Assert.Equal(isOn, cost.All(s => s.Id != "pitch-slope"));
            var doubt = DoubtStudy.Run(new DoubtAsked { Car = car, Draws = 10 });
            Assert.Equal(isOn && doubt.Asked.AreStated, doubt.Sentences.Any(s => s.Id == "on-bump-stops"));
        }
    }, iter: 20);

    [Fact]
    public void No_speed_is_denied_that_the_linear_ends_have_and_no_catching_up_that_they_do() => Answers.Sample(answer =>
    {
        foreach (var model in answer.Models)
        {
            var ends = Coincidence.Of(model);
            var denied = Said(answer, DescribeNotes.SuitedSpeedId)!.Contains($"'{model.Load.Name}'", StringComparison.Ordinal);
            Assert.Equal(ends.SpeedFor(Coincidence.SuitedCycles) > 150.0 / 3.6, denied);
            var softer = Said(answer, $"rear-softer-{model.Load.Name}");
            Assert.False(softer is not null && softer.Contains("cannot catch up", StringComparison.Ordinal) && ends.FallsIntoStep);
        }
    }, iter: 60);

    // δ_r/δ_f = 0.70 means √(δ_f/δ_r) = 1.195 on rigid tyres, a closed form.
    [Fact]
    public void A_car_that_keeps_the_rule_is_said_to_keep_it()
    {
        Assert.Equal(1.195, LoadRule.Ratio(LoadRule.LightShare), 5e-4);
        Assert.Equal(1.0, LoadRule.Ratio(LoadRule.HeavyShare));
        Assert.Equal([0, 0, 0, 1, -1], new[] { 0.70, 0.73, 0.67, 0.74, 0.66 }.Select(share => LoadRule.Verdict(share, LoadRule.LightShare)));
    }

    [Fact]
    public void One_of_several_loads_alone_is_held_against_no_rule_of_two()
    {
        var car = PlainCar.Saloon with { LoadStates = [PlainCar.With(75.0, 1.2) with { Name = "driver" }, PlainCar.With(300.0, 2.2)] };
        Assert.Null(Said(DescribeStudy.Run(new DescribeAsked { Car = car, Loads = [car.LoadStates[1]] }), DescribeNotes.LoadRuleId));
        var alone = DescribeStudy.Run(DescribeAsked.Of(car with { LoadStates = [car.LoadStates[0]] }));
        Assert.Contains("'driver', the only load", Said(alone, DescribeNotes.LoadRuleId), StringComparison.Ordinal);
        Assert.Null(Said(DescribeStudy.Run(DescribeAsked.Of(PlainCar.Saloon)), DescribeNotes.LoadRuleId));
    }

    private static string? Said(Answer answer, string id) => answer.Sentences.SingleOrDefault(s => s.Id == id)?.Text;

    private static double Number(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"pressed to (?<l>[0-9]+) % \(ratio (?<lr>[0-9.]+)\) of the front ones under '(?<light>[a-z]+)' "
        + @"and to (?<h>[0-9]+) % \(ratio (?<hr>[0-9.]+)\) under '(?<heavy>[a-z]+)': ")]
    private static partial Regex Standing();

    // A load far behind tips a light car: it is refused, and there is nothing to say.
    private static bool Stands(Car car, LoadState load)
    {
        try
        {
            return RideModel.Of(car, load) is not null;
        }
        catch (RefusedValueException)
        {
            return false;
        }
    }
}
