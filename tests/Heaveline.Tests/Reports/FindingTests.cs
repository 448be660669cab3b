using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Figures;
using Heaveline.Tests.Press;

namespace Heaveline.Tests.Reports;

public class FindingTests
{
    private static IReadOnlyList<string> Of(ReportAsked asked) =>
        ((Points)Assert.Single(Report.From(asked).Parts[0].Blocks)).Texts;

    [Fact]
    public void A_report_of_one_car_begins_with_what_is_the_matter_why_and_how_sure()
    {
        var asked = ReportSamples.Of(DrawnCars.Saloon, PartKind.Finding, PartKind.Why);
        var said = Of(asked);
        var work = new ReportWork(asked, StudyRun.Plain);
        var table = PassTable.Of("Pass", ["load"], [(work.Passes[0].Pass, work.Passes[0].Measures)]);
        string Printed(string key) =>
            table.Rows.Single(r => r.Key == key) is var row ? Numeral.Of(row.Values[0]!.Value, row.Format) : "";
        Assert.Contains(
            $"is {Printed("settling-rms-pitch")}°; peak pitch acceleration of the hit is {Printed("hit-peak-pitch-acceleration")} rad/s².",
            said[0]);
        // The largest cause is the first one of the part that ranks them.
        Assert.Contains(work.Why!.Settling.Causes.First(c => c.Cause.Text.Contains("it makes", StringComparison.Ordinal)).Cause.Text, said[1]);
        Assert.Equal(
            "How sure: the car files state no doubts, so that cannot be said. All of it is computed, none of it measured on a road.", said[2]);
        Assert.Equal(3, said.Count);
    }

    // A car that pitches less than one without its causes has no fault to be explained.
    [Fact]
    public void A_car_that_pitches_less_than_the_neutral_one_is_not_told_a_fault() =>
        AnyCar.FourWheeled.Sample(
            car =>
            {
                var asked = ReportSamples.Of(car, PartKind.Finding) with { Speed = 8.0 };
                var work = new ReportWork(asked, StudyRun.Plain);
                if (work.Why is { } why && double.IsFinite(why.Why.Settling.NeutralValue))
                {
                    var said = Of(asked)[1];
                    var isNone = why.Why.Settling.Value < 0.97 * why.Why.Settling.NeutralValue;
                    Assert.Equal(isNone, said.Contains("nothing is the matter", StringComparison.Ordinal));
                    Assert.False(isNone && said.Contains("largest cause", StringComparison.Ordinal), said);
                }
            },
            iter: 12,
            threads: 1);

    [Fact]
    public void A_pass_that_breaks_off_is_the_matter_and_nothing_else_is_said()
    {
        var high = Heaveline.Roads.Road.From(new Heaveline.Roads.RoundTopHump { Height = new(0.5), Length = new(2.5) });
        var said = Assert.Single(Of(ReportSamples.Of(DrawnCars.Saloon, PartKind.Finding) with { Road = high, Speed = 25.0 }));
        Assert.Contains("does not get across", said);
    }

    [Fact]
    public void Where_doubts_are_stated_the_interval_holds_the_stated_number()
    {
        var front = DrawnCars.Saloon.Front with { Spring = new() { Law = new LinearSpring { Rate = new(21000.0, new Doubt(1500.0)) } } };
        var doubted = DrawnCars.Saloon with { Front = front };
        var said = Of(ReportSamples.Of(doubted, PartKind.Finding) with { Draws = 200 });
        var band = Regex.Match(said[2], @"between ([\d.]+)° and ([\d.]+)°");
        Assert.True(band.Success, said[2]);
        var stated = double.Parse(Regex.Match(said[0], @"is ([\d.]+)°").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.InRange(
            stated,
            double.Parse(band.Groups[1].Value, CultureInfo.InvariantCulture),
            double.Parse(band.Groups[2].Value, CultureInfo.InvariantCulture));
    }

    // Four numbers of lengths at least: none is left in the other units.
    [Fact]
    public void A_finding_in_imperial_units_leaves_no_metric_number()
    {
        var worse = DrawnCars.Saloon with
        {
            Name = "worse",
            Front = DrawnCars.Saloon.Front with { Spring = new() { Law = new LinearSpring { Rate = new(15000.0) } } },
        };
        var asked = ReportSamples.Of(DrawnCars.Saloon, PartKind.Finding) with
        {
            Cars = [.. new[] { DrawnCars.Saloon, worse }.Select(c => LoadedCar.Of(c))],
            Units = ReaderUnits.Imperial,
        };
        var said = string.Join(' ', Of(asked));
        Assert.Matches(@"left to the bump stop −?[\d.]+ in instead of −?[\d.]+ in", said);
        Assert.DoesNotMatch(@"\d mm|km/h", said);
    }

    [Fact]
    public void What_a_change_costs_is_each_number_of_the_tables_that_is_worse_by_three_in_a_hundred_and_no_other() =>
        Gen.Select(AnyCar.FourWheeled, Gen.Double[0.6, 1.6], Gen.Double[0.0, 40000.0]).Sample(
            (car, stiffness, bar) =>
            {
                var changed = car with
                {
                    Name = "changed",
                    Front = car.Front with { AntiRollBar = new(bar) },
                    Rear = car.Rear with { Tyre = car.Rear.Tyre with { Rate = new(car.Rear.Tyre.Rate.Si * stiffness) } },
                };
                var asked = ReportSamples.Of(car, PartKind.Finding)
                    with
                { Cars = [ReportSamples.Usual(car), ReportSamples.Usual(changed)], Speed = 6.0 };
                var work = new ReportWork(asked, StudyRun.Plain);
                if (work.Passes.Any(p => !p.IsWhole))
                {
                    return;
                }

                var price = Of(asked).Single(t => t.StartsWith("What that costs", StringComparison.Ordinal));
                Measure<Pass>[] heads = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];
                var (before, after) = (work.Passes[0], work.Passes[1]);
                var driven = PassCatalogue.Of(car.Seats.Select(s => SeatPlace.Of(s.Name)), WheelPlace.Axles(before.Model.Rolls))
                    .Where(m => m.IsUsed(asked.Road, MeasureUse.Short)).Except(heads)
                    .Select(m => (Measure: (Measure)m, Before: m.Of(before.Pass), After: m.Of(after.Pass)));
                var standing = CostTable.Measures(work.Cost.Cars).Where(m => m.Uses.HasFlag(MeasureUse.Short))
                    .Select(m => (Measure: (Measure)m, Before: m.Of(work.Cost.Cars[0]), After: m.Of(work.Cost.Cars[1])));
                foreach (var (measure, was, now) in driven.Concat(standing).Where(r => double.IsFinite(r.Before) && double.IsFinite(r.After)))
                {
                    string Print(double si) => measure.Print(measure.Unit.Of(si)) + measure.Unit.Suffix;
                    var worse = measure.Better switch { Better.More => was - now, Better.Less => now - was, _ => double.NaN };
                    var isWorse = worse >= 0.03 * Math.Abs(was) && Print(was) != Print(now) && measure.Key != "lamp-drop";
                    var words = $"{measure.Name} {Print(now)} instead of {Print(was)}";
                    Assert.Equal((measure.Key, isWorse), (measure.Key, price.Contains(words, StringComparison.Ordinal)));
                }

                var moved = SideEffectsChange.Between(work.Cost.Cars[0].SideEffects, work.Cost.Cars[1].SideEffects).FrontShareChange;
                Assert.Equal(moved < -0.02, price.Contains("held by the rear", StringComparison.Ordinal));
            },
            iter: 25,
            threads: 1);
}
