using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
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
        Assert.Contains($"{best.HalfWidths[CarNumber.FrequencyRatio] * 100.0:F1} %", said, StringComparison.Ordinal);
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
    public void A_change_is_planned_by_its_size_and_the_scatter()
    {
        var answer = PlanStudy.Run(Asked("driver") with { Change = Car("fern-saloon-cured", "driver") });
        var best = answer.Best!;
        Assert.Equal("change", answer.Head[0].Id);
        Assert.True(best.PassesForChange is null || PassScatter.Power(best.PassesForChange.Value, best.Change!.Value, best.Scatter) >= 0.8);
        Assert.Equal(answer.Day.Drives.Min(d => d.PassesForChange ?? int.MaxValue), best.PassesForChange ?? int.MaxValue);
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
    public void A_loaded_car_shows_a_change_on_its_stops_where_its_tyres_keep_their_load_and_it_is_said_that_no_car_is_told()
    {
        var answer = PlanStudy.Run(Asked("four up with luggage") with { Change = Car("fern-saloon-cured", "four up with luggage") });
        var best = answer.Best!;
        Assert.True(best.ReachesStops);
        Assert.InRange(best.LeastLoad, PlankWish.LeastLoad, 1.0);
        Assert.Null(best.PassesForNumber);
        Assert.Equal(["change", "stops"], answer.Head.Select(s => s.Id));
        Assert.Contains("They tell no car", answer.Head[1].Text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", string.Join("\n", answer.Lines), StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Tables[0].Rows, r => r.Key == "plan-ratio");
    }

    [Fact]
    public void Over_low_humps_the_loaded_car_stays_off_its_stops()
    {
        var answer = PlanStudy.Run(Asked("four up with luggage") with { Humps = [.. TestHump.Low] });
        Assert.False(answer.Best!.ReachesStops);
        Assert.Contains("30 mm", answer.Sentences.Single(s => s.Id == "step-4").Text, StringComparison.Ordinal);
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
