using Heaveline.Answers;
using Heaveline.Press;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Figures;
using Heaveline.Tests.Press;

namespace Heaveline.Tests.Reports;

public class ReportTests
{
    // Of one car; drives and studies have a garage and tests of their own.
    private static readonly PartKind[] Alone =
        [.. Enum.GetValues<PartKind>().Where(k => k is not (PartKind.Compare or PartKind.Drive or PartKind.Prove or PartKind.Choose
            or PartKind.Film))];

    [Fact]
    public void A_report_holds_what_was_chosen_in_its_order_then_cautions_sources_and_how_to_make_it_again()
    {
        var report = Report.From(ReportSamples.Of(DrawnCars.Saloon, PartKind.Cost, PartKind.Car));
        Assert.Equal(
            [
                "Roll, dive, travel, headlamp",
                "The car: Hazel saloon",
                "Before anybody acts on these numbers",
                "Sources of the numbers",
                "To make this report again",
            ],
            report.Parts.Select(p => p.Heading));
    }

    [Fact]
    public void A_pass_with_dampers_driven_past_their_tables_says_so_in_its_part()
    {
        // A table that ends at 0.1 m/s.
        var damper = DrawnCars.Saloon.Front.Damper with
        {
            Law = new Heaveline.Cars.TableDamper(new([0.05, 0.1], [75.0, 150.0]), new([0.05, 0.1], [150.0, 300.0])),
        };
        var car = DrawnCars.Saloon with { Front = DrawnCars.Saloon.Front with { Damper = damper } };
        var part = Report.From(ReportSamples.Of(car, PartKind.Pass)).Parts[0];
        Assert.Contains(part.Blocks.OfType<Caution>(), told => told.Text.Contains("past the end of its table", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_part_says_something_and_every_source_of_a_part_is_listed()
    {
        var report = Report.From(ReportSamples.Of(DrawnCars.Saloon, Alone));
        Assert.Equal(Alone.Length + 3, report.Parts.Length);
        var listed = report.Parts[^2].Blocks.OfType<Tabulated>().Single().Table.Rows.Select(r => r.Cells[0]).ToList();
        Assert.All(report.Parts.SelectMany(p => p.Sources), s => Assert.Contains(s.Key, listed));
        Assert.Equal(listed.Distinct(), listed);
    }

    [Fact]
    public void The_same_choices_give_the_same_page_however_many_passes_run_at_once()
    {
        var choices = ReportSamples.Of(DrawnCars.Saloon, Alone);
        Assert.Equal(Html.Of(Report.From(choices)), Html.Of(Report.From(choices, new StudyRun { Degree = 4 })));
    }

    [Fact]
    public void Several_cars_are_set_side_by_side_and_the_change_has_its_price()
    {
        var softer = DrawnCars.Saloon with { Name = "Hazel saloon, trimmed", Front = DrawnCars.Saloon.Front with { AntiRollBar = new(20000.0) } };
        var report = Report.From(
            ReportSamples.Of(DrawnCars.Saloon, PartKind.Compare, PartKind.Cost)
                with
            { Cars = [ReportSamples.Usual(DrawnCars.Saloon), ReportSamples.Usual(softer)] });
        Assert.Equal(["Side by side", "The price of the change"], report.Parts.Take(2).Select(p => p.Heading));
        Assert.Equal(2, report.Parts[0].Blocks.OfType<Illustration>().Count());
        Assert.Contains(
            report.Parts[1].Blocks.OfType<Points>().SelectMany(p => p.Texts), t => t.StartsWith("Changed anti-roll bar", StringComparison.Ordinal));
    }

    [Fact]
    public void A_road_without_a_bump_leaves_the_rule_unjudged_and_says_so()
    {
        var waves = Road.From(new SineRoad { Wavelength = new(6.0), Amplitude = new(0.01), Waves = 10 });
        var report = Report.From(ReportSamples.Of(DrawnCars.Saloon, PartKind.Rule) with { Road = waves });
        Assert.Contains("has no single bump", ((Paragraph)report.Parts[0].Blocks.Single()).Text);
    }

    [Fact]
    public void A_road_too_rough_for_the_ride_leaves_the_reason_in_its_part()
    {
        var fern = Heaveline.Tests.Rides.GasFern.OnGas;
        var report = Report.From(ReportSamples.Of(fern, PartKind.Ride) with { RoadClass = RoadClass.H, Speeds = [22.0] });
        Assert.Contains("no linear car could be found", ((Caution)Assert.Single(report.Parts[0].Blocks)).Text);
    }

    [Fact]
    public void A_car_without_doubts_says_how_to_state_them()
    {
        var report = Report.From(ReportSamples.Of(DrawnCars.Saloon, PartKind.Doubt, PartKind.Car));
        Assert.Contains("states no doubts", ((Paragraph)report.Parts[0].Blocks.Single()).Text);
        Assert.Contains(report.Parts[1].Blocks.OfType<Paragraph>(), p => p.Text.Contains("states no doubts", StringComparison.Ordinal));
    }

    [Fact]
    public void Choices_that_cannot_be_are_refused()
    {
        var choices = ReportSamples.Of(DrawnCars.Saloon, PartKind.Car);
        Assert.Throws<RefusedValueException>(() => choices with { Cars = [.. choices.Cars, .. choices.Cars] });
        Assert.Throws<RefusedValueException>(() => choices with { Cars = [] });
        Assert.Throws<RefusedValueException>(() => choices with { Parts = [PartKind.Car, PartKind.Car] });
        Assert.Throws<RefusedValueException>(() => Report.From(choices with { Parts = [PartKind.Drive] }));
        Assert.Throws<RefusedValueException>(() => Report.From(choices with { Parts = [PartKind.Prove] }));
        Assert.Throws<RefusedValueException>(() => Report.From(choices with { Parts = [PartKind.Film] }));
        Assert.Throws<RefusedValueException>(() => choices with { Draws = 3 });
        Assert.Throws<RefusedValueException>(() => choices with { Speed = 0.0 });
        Assert.Throws<RefusedValueException>(() => new InputText { Name = "a", Text = "", Sha256 = "12" });
    }

    [Fact]
    public void Sources_are_told_apart_by_their_keys()
    {
        Assert.Equal(Sources.All.Count, Sources.All.Select(s => s.Key).Distinct().Count());
    }
}
