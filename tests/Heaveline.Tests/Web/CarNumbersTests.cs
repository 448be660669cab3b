using System.Text;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Garages;
using Heaveline.Cli.Output;
using Heaveline.Measures;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Cars;

namespace Heaveline.Tests.Web;

public class CarNumbersTests
{
    private static readonly Garage Garage = new(Path.Combine(Checkout.Root, "examples", "garage"));

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Garage.Folder, "*.yaml").Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_example_has_its_numbers_at_every_load_state_with_their_doubts(string file)
    {
        var car = Garage.Car(file).Value!;
        var numbers = CarNumbers.WithDoubts(car);
        Assert.Equal(car.LoadStates.Count + 1, numbers.Models.Count);
        Assert.Empty(numbers.Answer.Unbearable);
        Assert.Null(numbers.NoDoubts);
        Assert.All(numbers.Answer.Rows.SelectMany(part => part.Rows), row =>
        {
            var (from, to) = row.Span;
            Assert.True(from < to, row.Measure.Key);
            Assert.All(row.Cells.OfType<DoubtedNumber>(), cell => Assert.True(
                double.IsFinite(cell.Value) && cell.HalfWidth >= 0.0 && cell.Value - cell.HalfWidth >= from && cell.Value + cell.HalfWidth <= to,
                row.Measure.Key));
        });
    }

    [Fact]
    public void Numbers_that_nobody_waits_for_any_more_are_not_counted_on()
    {
        using var stop = new CancellationTokenSource();
        var car = Garage.Car("fern-saloon.yaml").Value!;
        Assert.Throws<OperationCanceledException>(() => CarNumbers.WithDoubts(car, _ => stop.Cancel(), stop.Token));
    }

    [Fact]
    public void The_doubts_are_twice_the_standard_deviation_that_drawn_cars_scatter_by()
    {
        // Against another way of propagation: JCGM 101:2008, drawing, beside the slopes of JCGM 100:2008. 4000 draws leave about
        // 1 % on a deviation; curvature adds to it.
        var car = Garage.Car("fern-saloon.yaml").Value!;
        var numbers = CarNumbers.WithDoubts(car);
        var drawn = JointStudy.Of(
            [CarDoubts.Of(car, car.LoadStates[1])], [AxleCatalogue.Frequency(AxleEnd.Front), AxleCatalogue.FrequencyRatio], 4000, 7).Cars[0];
        Assert.Equal(2.0 * drawn[0].StandardDeviation, Cell(numbers, "front-frequency", 2).HalfWidth, 0.06 * 2.0 * drawn[0].StandardDeviation);
        Assert.Equal(2.0 * drawn[1].StandardDeviation, Cell(numbers, "ratio", 2).HalfWidth, 0.06 * 2.0 * drawn[1].StandardDeviation);
    }

    [Fact]
    public void Numbers_as_files_hold_every_row_and_no_cell_becomes_a_formula()
    {
        var car = Garage.Car("fern-saloon.yaml").Value!;
        var numbers = CarNumbers.WithDoubts(car with { LoadStates = [car.LoadStates[0] with { Name = "=cmd()" }] });
        var lines = Encoding.UTF8.GetString(numbers.Answer.Csv()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(numbers.Answer.Rows.Sum(part => part.Rows.Count) + 1, lines.Length);
        Assert.Contains("'=cmd()", lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_page_gives_away_is_what_the_command_says_with_the_doubts_behind_it()
    {
        var file = Path.Combine(Garage.Folder, "fern-saloon.yaml");
        var numbers = CarNumbers.WithDoubts(Garage.Car("fern-saloon.yaml").Value!);
        var page = JsonNode.Parse(numbers.Answer.Json(Release.Version, DescribeStudy.Question.Word))!.AsObject();
        var tables = page["tables"]!.AsArray();
        Assert.Equal(["Standing, ± (2σ)", "Axles, ± (2σ)", "Body, ± (2σ)"], tables.Skip(3).Select(t => t!["title"]!.GetValue<string>()));
        Assert.Equal(
            2.0 * numbers.Answer.SlopesOf(AxleCatalogue.FrequencyRatio, 1).StandardDeviation,
            tables[4]!["rows"]!.AsArray().Single(row => row!["key"]!.GetValue<string>() == "ratio")!["values"]![1]!.GetValue<double>());
        while (tables.Count > 3)
        {
            tables.RemoveAt(3);
        }

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(Spoken.Of("describe", file, "--json").Results), page));
    }

    [Fact]
    public void The_page_rounds_a_doubt_as_the_report_does()
    {
        var answer = CarNumbers.WithDoubts(Garage.Car("fern-saloon.yaml").Value!).Answer;
        var printed = LoadsTable.Of(answer).OfType<Tabulated>().SelectMany(t => t.Table.Rows).SelectMany(row => row.Cells.Skip(2));
        Assert.Equal(
            printed,
            answer.Rows.SelectMany(part => part.Rows)
                .SelectMany(row => row.Cells.Select(row.Print)).Select(p => p.Doubt is null ? p.Value : $"{p.Value} ± {p.Doubt}"));
    }

    [Fact]
    public void A_car_without_doubts_is_told_so()
    {
        var text = Garage.Read("drover-van.yaml").Text!;
        var plain = string.Join(
            '\n',
            text.Split('\n').Select(line => System.Text.RegularExpressions.Regex.Replace(line, @" ± [0-9.]+ ?(%|mm|cm|kg|N)?|, scale: [^}]*", "")));
        var car = Garage.Car("drover-van.yaml", plain).Value;
        Assert.NotNull(car);
        Assert.NotNull(CarNumbers.WithDoubts(car).NoDoubts);
    }

    private static DoubtedNumber Cell(CarNumbers numbers, string key, int load) =>
        numbers.Answer.Rows.SelectMany(part => part.Rows).Single(row => row.Measure.Key == key).Cells[load]!;
}
