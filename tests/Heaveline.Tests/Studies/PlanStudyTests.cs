using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

public class PlanStudyTests
{
    private static readonly Lazy<PlanAnswer> OfSaloon = new(() => PlanStudy.Run(Asked("driver")));

    [Fact]
    public void The_day_says_hump_speeds_passes_and_what_they_tell()
    {
        var (answer, best) = (OfSaloon.Value, OfSaloon.Value.Best!);
        var said = answer.Head.Single(s => s.Id == "doubt").Text;
        Assert.Contains(best.Hump.Name, said, StringComparison.Ordinal);
        Assert.Contains($"to ± {answer.Reached * 100.0:F1} %", said, StringComparison.Ordinal);
        Assert.Contains($"{answer.CardPasses} passes over", said, StringComparison.Ordinal);
        Assert.InRange(answer.Reached, 0.0, 0.5 * answer.Doubt);
        Assert.Contains($"{answer.Doubt * 100.0:F1} % (90 %)", said, StringComparison.Ordinal);
        // Every speed stands with its unit, so that a reader of miles reads them all.
        Assert.Equal(3, said.Split("km/h").Length - 1);
        Assert.DoesNotContain("km/h", string.Concat(answer.LinesIn(Heaveline.Quantities.ReaderUnits.Of("imperial"))), StringComparison.Ordinal);
    }

    [Fact]
    public void The_protocol_has_all_that_a_log_is_asked_for()
    {
        var steps = string.Join(" ", OfSaloon.Value.Sentences.Where(s => s.Id.StartsWith("step-", StringComparison.Ordinal)).Select(s => s.Text));
        foreach (var word in (string[])["Weigh", "wheelbase", "Tape the phone", "100 Hz", "5 s", "brake", "two turns", "pressures", "one thing"])
        {
            Assert.Contains(word, steps, StringComparison.Ordinal);
        }

        Assert.Contains(OfSaloon.Value.Closing, c => c.Contains("off public roads", StringComparison.Ordinal));
        Assert.True(OfSaloon.Value.CardPasses >= 12);
    }

    [Fact]
    public void A_change_that_cannot_be_shown_says_nothing_against_the_passes_that_halve_the_doubt()
    {
        var answer = PlanStudy.Run(Asked("driver") with { Change = Car("fern-saloon", "driver") });
        Assert.Contains("changes nothing", answer.Head[0].Text, StringComparison.Ordinal);
        var passes = answer.Best!.PassesForNumber!.Value;
        Assert.Contains($"{passes} passes over", answer.Head[1].Text, StringComparison.Ordinal);
        Assert.Contains("would halve the doubt", answer.Head[1].Text, StringComparison.Ordinal);
        Assert.DoesNotContain("No 36", answer.Head[1].Text, StringComparison.Ordinal);
        Assert.InRange(answer.Reached, 0.0, 0.5 * answer.Doubt);
    }

    [Fact]
    public void A_change_is_planned_by_its_size_and_the_scatter()
    {
        var answer = PlanStudy.Run(Asked("driver") with { Change = Car("fern-saloon-cured", "driver") });
        var best = answer.Best!;
        Assert.Equal("change", answer.Head[0].Id);
        Assert.True(best.PassesForChange is null || PassScatter.Power(best.PassesForChange.Value, best.Change!.Value, best.Scatter) >= 0.8);
        Assert.Equal(answer.Day.Drives.Min(d => d.PassesForChange ?? int.MaxValue), best.PassesForChange ?? int.MaxValue);
        // One number in both sentences and the step, the same at each speed.
        var passes = answer.CardPasses;
        Assert.Equal(0, passes % 3);
        Assert.Contains($"{passes} passes before and {passes} after", answer.Head[0].Text, StringComparison.Ordinal);
        Assert.Contains($"The {passes} passes before", answer.Head[1].Text, StringComparison.Ordinal);
        Assert.Contains($" {passes} times, {passes / 3} each", answer.Sentences.Single(s => s.Id == "step-4").Text, StringComparison.Ordinal);
        // Twelve are planned where fewer would do, and it is said how many.
        var fewest = Enumerable.Range(4, 33).First(n => PassScatter.Power(n, best.Change!.Value, best.Scatter) >= 0.8);
        Assert.InRange(fewest, 4, 11);
        Assert.Equal(12, passes);
        Assert.Contains(
            $"At least 12 passes are planned, 4 at each speed; {fewest} in each state would show the change.", answer.Cautions);
    }

    [Fact]
    public void What_no_passes_tell_has_no_card()
    {
        var all = OfSaloon.Value;
        var day = all.Day with { Drives = [.. all.Day.Drives.Select(d => d with { FewestForNumber = null })] };
        HasNoCard(all with { Day = day }, "No 36 passes");
        HasNoCard(PlanStudy.Run(Asked("driver") with { Change = Car("fern-saloon", "driver") }), "changes nothing");
    }

    [Fact]
    public void Dampers_without_a_stated_doubt_are_not_known_to_a_part_of_a_per_cent()
    {
        var van = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "drover-van.yaml")).Value!;
        var doubt = FileDoubt.Of(LoadedCar.Of(van, LoadedCar.UsualLoad(van)), CarNumber.RearDamping);
        // ln(151/66)/2: the range that ties take before any is read.
        Assert.InRange(doubt.HalfWidth, 0.5 * Math.Log(1.51 / 0.66) - 0.005, 0.5);
        Assert.Contains("no doubt of its rear dampers", Assert.Single(doubt.Silent).Says, StringComparison.Ordinal);
        Assert.Empty(FileDoubt.Of(Car("fern-saloon", "driver"), CarNumber.RearDamping).Silent);
        Assert.Empty(OfSaloon.Value.FromFile.Silent);
    }

    [Fact]
    public void A_day_on_two_wheels_has_no_floor_no_belt_no_passenger_and_no_turns()
    {
        var bike = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "plover-motorcycle.yaml")).Value!;
        var answer = PlanStudy.Run(Asked("driver") with { Car = LoadedCar.Of(bike, LoadedCar.LoadNamed(bike, "rider")) });
        var said = string.Join(' ', answer.Sentences.Select(s => s.Text).Concat(answer.Closing));
        Assert.True(answer.CardPasses > 0, answer.Head[0].Text);
        foreach (var word in (string[])["floor", "elted", "passenger", "turns,", "two turns"])
        {
            Assert.DoesNotContain(word, said, StringComparison.Ordinal);
        }

        Assert.Contains("phone to the frame or the tail", said, StringComparison.Ordinal);
        Assert.Contains("Rider in full gear", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_no_hump_is_safe_it_is_said_and_drawn_with_the_load_that_is()
    {
        var answer = PlanStudy.Run(Asked("four up with luggage"));
        Assert.Null(answer.Best);
        Assert.Contains("No test day", answer.Head[0].Text, StringComparison.Ordinal);
        Assert.Contains("Under 'driver' it does.", answer.Head[0].Text, StringComparison.Ordinal);
        Assert.Equal("No test day", answer.Figure(PlanAnswer.Card).Title);
    }

    [Fact]
    public void No_change_sends_anybody_onto_the_stops_and_a_lower_hump_is_named()
    {
        var answer = PlanStudy.Run(Asked("four up with luggage") with { Change = Car("fern-saloon-cured", "four up with luggage") });
        Assert.Null(answer.Best);
        Assert.Equal(0, answer.CardPasses);
        Assert.Equal("No test day", answer.Figure(PlanAnswer.Card).Title);
        var instead = answer.Day.Instead[0];
        Assert.Contains($"Over {instead.Hump.Name} (", answer.Head.Single().Text, StringComparison.Ordinal);
        foreach (var (model, speed) in instead.Speeds.SelectMany(v => new[] { (answer.Wish.Model, 1.05 * v), (answer.Wish.After!, 1.05 * v) }))
        {
            Assert.True(SafePass.Is(Heaveline.Passes.Pass.Of(model, instead.Hump.Road, speed)));
        }
    }

    [Fact]
    public void Over_low_humps_the_loaded_car_stays_off_its_stops()
    {
        var answer = PlanStudy.Run(Asked("four up with luggage") with { Humps = [.. TestHump.Low] });
        Assert.True(answer.Best!.TravelLeft > SafePass.StopMargin);
        Assert.Contains("There is no card", answer.Head.Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hump_that_is_left_out_is_left_out_for_what_happens_at_the_speeds_tried()
    {
        var said = string.Join(' ', OfSaloon.Value.Cautions);
        Assert.DoesNotContain("or below", said, StringComparison.Ordinal);
        var bike = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "plover-motorcycle.yaml")).Value!;
        var answer = PlanStudy.Run(Asked("driver") with
        {
            Car = LoadedCar.Of(bike, LoadedCar.LoadNamed(bike, "rider")),
            Humps = [.. TestHump.OfBoards, new TestHump { Name = "plank", Road = NamedRoads.Find("plank").Value! }],
        });
        Assert.All(answer.Day.Unsafe, h => Assert.Contains(
            new[] { 9.0, 12.0, 15.0 }.SelectMany(v => new[] { v, 1.05 * v }),
            v => Heaveline.Passes.Pass.Of(answer.Wish.Model, h.Road, v / 3.6) is var p && (!SafePass.Is(p) || SafePass.LeastLoad(p) < 0.2)));
        Assert.Equal(!answer.Day.Unsafe.IsEmpty, string.Join(' ', answer.Cautions).Contains("at 9, 12 or 15 km/h", StringComparison.Ordinal));
    }

    [Fact]
    public void Boards_come_with_their_sizes_and_their_safety_words()
    {
        var answer = PlanStudy.Run(Asked("driver") with { Humps = [.. TestHump.OfBoards] });
        Assert.Contains("mm high and", answer.Sentences.Single(s => s.Id == "step-4").Text, StringComparison.Ordinal);
        Assert.Contains(answer.Closing, c => c.Contains("A loose board flies", StringComparison.Ordinal));
        Assert.DoesNotContain(OfSaloon.Value.Closing, c => c.Contains("A loose board flies", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("--hump", "kerb-down", "must end as high as it begins")]
    [InlineData("--hump", "plank-left", "both wheel tracks")]
    [InlineData("--tells", "colour", "no number of a car that a drive tells")]
    [InlineData("--class", "Z", "no road class")]
    [InlineData("--change", "nowhere.yaml", "nowhere.yaml")]
    [InlineData("--first", "nowhere.csv", "nowhere.csv")]
    public void Words_that_make_no_day_are_refused(string option, string words, string because)
    {
        var said = Spoken.Of("plan", "examples/garage/fern-saloon.yaml", option, words);
        Assert.NotEqual(0, said.Code);
        Assert.Contains(because, said.Remarks, StringComparison.Ordinal);
    }

    private static void HasNoCard(PlanAnswer answer, string because)
    {
        Assert.Equal(0, answer.CardPasses);
        Assert.Contains(because, answer.Head[0].Text, StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Sentences, s => s.Id.StartsWith("step-", StringComparison.Ordinal));
        Assert.Equal("No test day", answer.Figure(PlanAnswer.Card).Title);
        Assert.Null(answer.Facts["passes"]);
    }

    [Fact]
    public void What_passes_tell_begins_where_the_first_drive_ended()
    {
        var answer = PlanStudy.Run(Asked("four up with luggage") with { Humps = [TestHump.Low[0]], First = LarchLane.Before.Log });
        var told = answer.Wish.First!.Estimates.Single(e => e.Number == CarNumber.FrequencyRatio);
        var half = 0.5 * Math.Log(told.High / told.Low);
        var (drive, stop) = (answer.Best!, TestContext.Current.CancellationToken);
        double After(int passes) => TestDay.HalfWidths(answer.Wish, drive.Hump, drive.Speeds, passes, 1.3, stop)[CarNumber.FrequencyRatio];
        // Weighed as the protocol says the car's front share is surer than the file's.
        Assert.InRange(After(0) / half, 0.88, 1.02);
        Assert.True(After(3) < After(0) && After(12) < After(3));
        Assert.Contains("it is taken for Fern saloon, four up with luggage", answer.Cautions[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_first_drive_tells_nothing_of_other_loads()
    {
        var asked = Asked("four up with luggage") with { Humps = [TestHump.Low[0]] };
        var (alone, first) = (PlanStudy.Run(asked), PlanStudy.Run(asked with { First = LarchLane.Before.Log }));
        Assert.NotNull(first.Wish.First);
        Assert.NotEmpty(alone.Loads);
        Assert.Equal(alone.Loads, first.Loads);
    }

    [Fact]
    public void A_doubt_that_was_taken_is_not_said_to_be_the_car_files()
    {
        var van = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "drover-van.yaml")).Value!;
        var answer = PlanStudy.Run(Asked("driver") with { Car = LoadedCar.Of(van, LoadedCar.UsualLoad(van)), Number = CarNumber.RearDamping });
        Assert.NotEmpty(answer.FromFile.Silent);
        Assert.DoesNotContain("which the car file leaves", answer.Head[0].Text, StringComparison.Ordinal);
        Assert.Contains("of which the car file states no doubt", answer.Head[0].Text, StringComparison.Ordinal);
    }

    private static PlanAsked Asked(string load) => new()
    {
        Car = Car("fern-saloon", load),
        Humps =
        [
            .. ((string[])["village-hump", "speed-table"]).Select(n => new TestHump { Name = n, Road = NamedRoads.Find(n).Value! }),
            .. TestHump.OfBoards,
        ],
    };

    private static LoadedCar Car(string name, string load)
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", $"{name}.yaml")).Value!;
        return LoadedCar.Of(car, LoadedCar.LoadNamed(car, load));
    }
}
