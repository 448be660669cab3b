using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
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
        string Printed(string key) => table.Rows.Single(r => r.Key == key) is var row ? Numeral.Of(row.Values[0]!.Value, row.Format) : "";
        Assert.Contains(
            $"is {Printed("settling-rms-pitch")}°; peak pitch acceleration of the hit is {Printed("hit-peak-pitch-acceleration")} rad/s².", said[0]);
        // The largest cause is the first one of the part that ranks them.
        Assert.Contains(work.Why!.Settling.Causes.First(c => c.Cause.Text.Contains("it makes", StringComparison.Ordinal)).Cause.Text, said[1]);
        Assert.Equal(
            "How sure: the car files state no doubts, so that cannot be said. All of it is computed, none of it measured on a road.", said[2]);
        Assert.Equal(3, said.Count);
    }

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
                var side = new CompareAnswer
                {
                    Asked = new CompareAsked { Cars = [.. work.Cars], Road = asked.Road, Speeds = [asked.Speed] },
                    Passes = [work.Passes],
                };
                string[] heads = ["settling-rms-pitch", "hit-peak-pitch-acceleration"];
                var rows = side.ShortTables[0].Rows.Where(r => !heads.Contains(r.Key)).Concat(work.Cost.ShortTables[0].Rows).ToList();
                var known = PassCatalogue.For(work.Cars[0].Model, asked.Road, MeasureUse.Short).Cast<Measure>()
                    .Concat(CostTable.Measures(work.Cost.Cars))
                    .DistinctBy(m => m.Key).ToDictionary(m => m.Key);
                foreach (var row in rows.Where(r => r.Values.All(v => v is not null)))
                {
                    var (measure, before, after) = (known[row.Key], row.Values[0], row.Values[^1]);
                    var worse = measure.Better switch { Better.More => before - after, Better.Less => after - before, _ => null };
                    var isWorse = worse >= 0.03 * Math.Abs(before ?? 0.0) && measure.Print(before!.Value) != measure.Print(after!.Value);
                    var words = $"{measure.Name} {measure.Print(after!.Value)}{measure.Unit.Suffix} instead of {measure.Print(before!.Value)}";
                    Assert.Equal((row.Key, isWorse), (row.Key, price.Contains(words, StringComparison.Ordinal)));
                }
            },
            iter: 25,
            threads: 1);
}
