using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Garages;
using Heaveline.Measures;
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
        Assert.All(numbers.Parts.SelectMany(part => part.Lines), line =>
        {
            var (from, to) = line.Span;
            Assert.True(from < to, line.Measure.Key);
            Assert.All(line.Cells.OfType<NumberCell>(), cell => Assert.True(
                double.IsFinite(cell.Value) && cell.HalfWidth >= 0.0 && cell.Value - cell.HalfWidth >= from && cell.Value + cell.HalfWidth <= to,
                line.Measure.Key));
        });
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
        var lines = CarRoutes.Csv(numbers).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(numbers.Parts.Sum(part => part.Lines.Count) + 1, lines.Length);
        Assert.Contains("'=cmd()", lines[0], StringComparison.Ordinal);
        using var json = System.Text.Json.JsonDocument.Parse(CarRoutes.Json(numbers));
        Assert.Equal(lines.Length - 1, json.RootElement.GetProperty("rows").GetArrayLength());
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

    private static NumberCell Cell(CarNumbers numbers, string key, int load) =>
        numbers.Parts.SelectMany(part => part.Lines).Single(line => line.Measure.Key == key).Cells[load]!;
}
