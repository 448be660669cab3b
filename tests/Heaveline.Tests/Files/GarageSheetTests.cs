using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Pages.Garages;

namespace Heaveline.Tests.Files;

public class GarageSheetTests
{
    private static readonly Dictionary<string, string> Three = new() { ["wheelbase"] = "2.74 m", ["front"] = "768 kg", ["rear"] = "672 kg" };

    // Least and most of each number, with the units that it may be written in and one of them in SI.
    private static readonly (string Key, double Least, double Most, (string Unit, double Si)[] Units)[] Ranges =
    [
        ("wheelbase", 2.0, 3.6, [("m", 1.0), ("in", 0.0254), ("mm", 0.001)]),
        ("front", 350.0, 1200.0, [("kg", 1.0), ("lb", 0.45359237)]),
        ("rear", 350.0, 1200.0, [("kg", 1.0), ("lb", 0.45359237)]),
        ("track", 1.2, 1.8, [("m", 1.0), ("in", 0.0254)]),
        ("front-spring", 15000.0, 60000.0, [("N/mm", 1000.0), ("lbf/in", 175.126835)]),
        ("rear-spring", 15000.0, 60000.0, [("N/mm", 1000.0), ("lb/in", 175.126835)]),
        ("front-moves", 0.030, 0.055, [("mm", 0.001), ("in", 0.0254)]),
        ("rear-moves", 0.030, 0.055, [("mm", 0.001)]),
        ("front-gap", 0.02, 0.12, [("mm", 0.001), ("in", 0.0254)]),
        ("rear-gap", 0.02, 0.12, [("mm", 0.001), ("cm", 0.01)]),
        ("damping", 0.1, 0.6, [("", 1.0), ("%", 0.01)]),
        ("unsprung", 40.0, 110.0, [("kg", 1.0), ("lb", 0.45359237)]),
        ("tyre", 150000.0, 300000.0, [("N/mm", 1000.0), ("lbf/in", 175.126835)]),
        ("height", 0.4, 0.8, [("m", 1.0), ("in", 0.0254)]),
        ("index", 0.8, 1.3, [("", 1.0)]),
    ];

    [Fact]
    public void What_it_looks_like_stands_in_the_file_and_what_none_looks_like_is_refused()
    {
        var sheet = GarageSheet.Of("Lark", new Dictionary<string, string>(Three) { ["body-style"] = "estate" });
        Assert.Equal(BodyStyle.Estate, CarFile.Read(new SourceText("car.yaml", sheet.Text!)).Value!.BodyStyle);
        Assert.Null(CarFile.Read(new SourceText("car.yaml", GarageSheet.Of("Lark", Three).Text!)).Value!.BodyStyle);
        var wrong = GarageSheet.Of("Lark", new Dictionary<string, string>(Three) { ["body-style"] = "teapot\nnote: x" });
        Assert.Null(wrong.Text);
        Assert.Contains("is no body style; there are hatchback", wrong.Refusals["body-style"], StringComparison.Ordinal);
    }

    // A bench says both travels, with their doubts; a car file takes that as it stands.
    [Theory]
    [InlineData("36 mm for 50 mm", 0.72)]
    [InlineData("36 mm ± 1 mm for 50 mm ± 1 mm at the wheel", 0.72)]
    [InlineData("1.5 in for 2 in at the wheel", 0.75)]
    [InlineData("36 mm", 0.72)]
    public void How_far_a_spring_moves_is_read_as_the_car_file_reads_it(string words, double ratio)
    {
        var sheet = GarageSheet.Of("Lark", new Dictionary<string, string>(Three) { ["front-spring"] = "24 N/mm", ["front-moves"] = words });
        Assert.Empty(sheet.Refusals);
        Assert.Equal(ratio, CarFile.Read(new SourceText("car.yaml", sheet.Text!)).Value!.Front.Spring.MotionRatio.AtReference.Si, 1e-9);
    }

    [Theory]
    [InlineData("36 mm for", "for which travel of the wheel")]
    [InlineData("36 for 50 mm", "36")]
    [InlineData("50 mm for 20 mm", "at most 2 times as far as the wheel")]
    [InlineData("36 mm for 0 mm", "at most 2 times as far as the wheel")]
    public void Two_travels_that_cannot_be_are_refused_in_words(string words, string said)
    {
        var sheet = GarageSheet.Of("Lark", new Dictionary<string, string>(Three) { ["front-spring"] = "24 N/mm", ["front-moves"] = words });
        Assert.Null(sheet.Text);
        Assert.Contains(said, sheet.Refusals["front-moves"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "0.55 m ± 7 cm", "18 saloons, hatchbacks and estates")]
    [InlineData("estate", "0.55 m ± 7 cm", "18 saloons, hatchbacks and estates")]
    [InlineData("off-roader", "0.68 m ± 8 cm", "21 off-roaders")]
    [InlineData("van", "0.63 m ± 12 cm", "3 people carriers measured by the US road safety agency, 2004; of so few the ± is common practice")]
    [InlineData("kit-car", "0.45 m ± 10 cm", "usual for a kit car")]
    public void How_high_the_weight_lies_is_taken_from_cars_that_look_alike(string? style, string height, string by)
    {
        var typed = new Dictionary<string, string>(Three);
        if (style is not null)
        {
            typed["body-style"] = style;
        }

        var line = GarageSheet.Of("Lark", typed).Text!.Split('\n').Single(one => one.Contains("centre-of-gravity-height", StringComparison.Ordinal));
        Assert.Contains($": {height} # estimated: ", line, StringComparison.Ordinal);
        Assert.Contains(by, line, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, 18, 0.05)]
    [InlineData("off-roader", 21, 0.06)]
    public void A_usual_height_is_doubted_by_what_holds_nineteen_further_cars_of_twenty(string? style, int cars, double nineOfTen)
    {
        // A median of normal values is less sure than their mean by π/2.
        var spread = nineOfTen / LeastSquares.Student(1_000_000, 0.9);
        var wide = LeastSquares.Student(cars - 1, 0.95) * spread * Math.Sqrt(1.0 + (0.5 * Math.PI / cars));
        var doubt = QuantityText.Parse<Length>(UsualHeight.Of(style).Value).Amount.Doubt;
        Assert.Equal(wide, doubt.StandardDeviation * LeastSquares.Student(1_000_000, 0.95), 0.005);
    }

    [Fact]
    public void Of_fewer_measured_cars_a_usual_height_is_doubted_more_and_the_doubt_is_not_called_measured()
    {
        double Doubt(string? style) => QuantityText.Parse<Length>(UsualHeight.Of(style).Value).Amount.Doubt.StandardDeviation;
        foreach (var few in new[] { "pick-up", "van" })
        {
            Assert.True(Doubt(few) > Doubt("off-roader"), few);
            Assert.Contains("the ± is common practice, no source", UsualHeight.Of(few).By, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_sheet_makes_a_car_that_is_in_order_and_can_be_described()
    {
        Assert.Equal(GarageSheet.Lines.Select(line => line.Key), Ranges.Select(range => range.Key));
        var random = new Random(20261);
        for (var n = 0; n < 120; n++)
        {
            var typed = new Dictionary<string, string>();
            foreach (var (key, least, most, units) in Ranges)
            {
                if (GarageSheet.Lines.First(line => line.Key == key).IsNeeded || random.Next(3) > 0)
                {
                    var (unit, si) = units[random.Next(units.Length)];
                    var value = (least + ((most - least) * random.NextDouble())) / si;
                    var doubt = random.Next(4) == 0 && unit != "%" ? " ± 5 %" : "";
                    typed[key] = FormattableString.Invariant($"{value:G5} {unit}").TrimEnd() + doubt;
                }
            }

            var sheet = GarageSheet.Of($"Car {n}: \"new\" # 1", typed);
            Assert.Empty(sheet.Refusals);
            var reading = CarFile.Read(new SourceText("car.yaml", sheet.Text!));
            Assert.True(reading.Refusals.Count == 0, sheet.Text + string.Join('\n', reading.Refusals.Select(refusal => refusal.Message)));
            Assert.Equal($"Car {n}: \"new\" # 1", reading.Value!.Name);
            Assert.NotEmpty(DescribeStudy.Run(DescribeAsked.Of(reading.Value) with { LeavesOutUnbearable = true }).Models);
            foreach (var (key, value) in typed)
            {
                Assert.True(sheet.Text!.Contains(value, StringComparison.Ordinal) || IsIdle(key, typed), key);
                Assert.DoesNotContain(key, sheet.Estimates.Keys);
            }

            // What is estimated says so in the file, and what is measured does not.
            var marked = UnmeasuredLines.In(sheet.Text!);
            var root = reading.Root!;
            foreach (var line in GarageSheet.Lines.Where(line => root.At([.. line.Path]) is not null))
            {
                Assert.Equal(!typed.ContainsKey(line.Key), marked.ContainsKey(UnmeasuredLines.Of(root.At([.. line.Path])!).Single()));
            }
        }
    }

    [Fact]
    public void Each_estimate_is_a_source_of_doubt_that_its_line_finds_again()
    {
        var car = Car(Three);
        var finding = SheetFinding.Of(car);
        var sources = CarDoubts.Of(car).Sources.SelectMany(source => source.Amounts).Select(amount => amount.Path).ToHashSet();
        foreach (var key in new[] { "track", "front-spring", "rear-spring", "damping", "unsprung", "tyre", "height", "index" })
        {
            Assert.Contains(GarageSheet.Lines.First(line => line.Key == key).Doubts, sources.Contains);
        }

        var withSprings = Car(new(Three) { ["front-spring"] = "22 N/mm", ["rear-spring"] = "160 lbf/in" });
        var (number, _, share) = SheetFinding.Of(withSprings).Next!.Value;
        Assert.Equal("rear-moves", GarageSheet.Lines[number - 1].Key);
        Assert.InRange(share, 0.5, 1.0);
        Assert.InRange(GarageSheet.Lines.Sum(one => SheetFinding.ShareOf(finding.Ratio, one)), 0.9, 1.0 + 1e-9);
        // 1.35 over 1.20 Hz on rigid tyres; tyres and load move it a little.
        Assert.InRange(finding.Ratio.Stated, 0.85, 1.25);
        Assert.True(SheetFinding.ShareOf(finding.Damping, GarageSheet.Lines.First(one => one.Key == "damping")) > 0.9);
    }

    [Fact]
    public void What_was_measured_narrows_the_band() => Assert.True(
        SheetFinding.Of(
            Car(new(Three) { ["front-spring"] = "22 N/mm", ["rear-spring"] = "38 N/mm", ["front-moves"] = "47.5 mm", ["rear-moves"] = "36 mm" }))
            .Ratio.StandardDeviation < 0.3 * SheetFinding.Of(Car(Three)).Ratio.StandardDeviation);

    [Theory]
    [InlineData("front-spring", "160 lb", "160 lb is")]
    [InlineData("wheelbase", "-2.7 m", "-2.7 m cannot be")]
    [InlineData("wheelbase", "27 m", "27 m cannot be")]
    [InlineData("damping", "many", "\"many\" is not a number")]
    [InlineData("front-moves", "0 mm", "0 mm cannot be")]
    public void What_cannot_be_is_refused_as_typed_and_no_file_is_made(string key, string typed, string words)
    {
        var sheet = GarageSheet.Of("Lark", new Dictionary<string, string>(Three) { [key] = typed });
        Assert.StartsWith(words, sheet.Refusals[key], StringComparison.Ordinal);
        Assert.Null(sheet.Text);
    }

    [Fact]
    public void A_reader_of_imperial_units_is_told_limits_in_them_of_what_stays_as_it_was_typed()
    {
        string Said(ReaderUnits units) =>
            GarageSheet.Of("Lark", new Dictionary<string, string>(Three) { ["front-moves"] = "500 mm" }, units).Refusals["front-moves"];
        Assert.Equal("500 mm cannot be; it must be above 0, at most 100 mm.", Said(ReaderUnits.Metric));
        Assert.Matches(@"^500 mm cannot be; it must be above 0, at most 3\.94\d* in\.$", Said(ReaderUnits.Imperial));
    }

    [Fact]
    public void Wheelbase_and_scales_are_never_guessed()
    {
        foreach (var key in Three.Keys)
        {
            var sheet = GarageSheet.Of("Lark", Three.Where(one => one.Key != key).ToDictionary());
            Assert.Equal([key], sheet.Missing);
            Assert.Null(sheet.Text);
        }
    }

    private static Car Car(Dictionary<string, string> typed) =>
        CarFile.Read(new SourceText("car.yaml", GarageSheet.Of("Lark", typed).Text!)).Value!;

    // How far a spring moves is not asked where its rate is estimated at the wheel.
    private static bool IsIdle(string key, Dictionary<string, string> typed) =>
        key is "front-moves" or "rear-moves" && !typed.ContainsKey(key.Replace("moves", "spring", StringComparison.Ordinal));
}
