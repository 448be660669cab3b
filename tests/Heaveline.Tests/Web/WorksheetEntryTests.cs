using Heaveline.Files.Cars;
using Heaveline.Files.Garages;
using Heaveline.Files.Yaml;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Cars;
using Heaveline.Web.Pages.Worksheets;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>A worksheet that is opened beside a field.</summary>
public sealed class WorksheetEntryTests
{
    private static readonly GarageView Garage = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    [Fact]
    public void Every_quantity_of_a_worksheet_has_a_box_and_every_unit_beside_it_is_one_of_it()
    {
        foreach (var door in SheetDoor.All)
        {
            foreach (var choice in door.Choices.Where(choice => choice.Kind != ChoiceKind.Tick))
            {
                Assert.NotEmpty(choice.Columns);
                Assert.All(choice.Columns.SelectMany(column => column.Units).Where(unit => unit.Length > 0), unit => Assert.Contains(
                    unit, new[] { "mm", "cm", "m", "in", "kg", "lb", "N", "lbf", "°", "s", "N/mm", "lbf/in" }));
            }
        }
    }

    [Fact]
    public void Every_field_that_has_a_worksheet_is_one_of_a_car_file_and_gets_a_value_that_it_takes()
    {
        var fields = CarFile.Form.All.Where(field => field.Path.Count > 0 && FieldSheet.For(field.Path) is not null).ToList();
        Assert.Equal(29, fields.Count);
        foreach (var field in fields)
        {
            var sheet = FieldSheet.For(field.Path)!;
            var entry = Filled(sheet);
            Assert.True(entry.Value is not null, $"{string.Join('/', field.Path)}: {string.Join(' ', entry.Elsewhere)} {entry.Waiting}");
            if (field.Quantity is { } quantity)
            {
                Assert.Null(quantity.Split(entry.Value.Text).Refusal);
            }
        }
    }

    // 2.5 N/mm: 25 mm shorter, 62.5 N more.
    [Fact]
    public void A_bare_reading_is_in_the_unit_of_its_column_and_a_whole_one_in_its_own()
    {
        var entry = Open("spring", "rate");
        var line = entry.Lines[0];
        foreach (var (row, (length, force)) in new[] { ("300", "100"), ("27.5 cm", "162.5"), ("250", "22.95 kg") }.Index())
        {
            (line.Cells[row][0], line.Cells[row][1]) = (length, force);
        }

        entry.Look();
        Assert.StartsWith("2.5", entry.Value!.Text, StringComparison.Ordinal);
        Assert.Equal("3 pairs of length and force", entry.Value.From);
        line.Units[1] = "kg";
        (line.Cells[0][1], line.Cells[1][1], line.Cells[2][1]) = ("10", "16.37", "22.74");
        entry.Look();
        Assert.StartsWith("2.499 N/mm ± 0.0", entry.Value!.Text, StringComparison.Ordinal);
        // What is typed stands as it was typed, and comes back.
        var again = Open("spring", "rate");
        again.Take(entry.Typed);
        Assert.Equal(entry.Value, again.Value);
        Assert.Equal("27.5 cm", again.Lines[0].Cells[1][0]);
    }

    [Theory]
    [InlineData("310 kg", "310 kg")]
    [InlineData("three", "three")]
    [InlineData("1,234", "may be thousands")]
    [InlineData("9000000 m", "9000000 m")]
    public void A_bad_reading_is_told_at_its_own_box(string reading, string told)
    {
        var entry = Open("spring", "rate");
        var line = entry.Lines[0];
        foreach (var row in Enumerable.Range(0, 3))
        {
            (line.Cells[row][0], line.Cells[row][1]) = (row == 1 ? reading : $"{300 - (row * 20)}", $"{100 + (row * 50)}");
        }

        entry.Look();
        Assert.Null(entry.Value);
        Assert.Contains(told, entry.Refusal(line, 1, 0)!, StringComparison.Ordinal);
        Assert.Null(entry.Refusal(line, 0, 0));
        Assert.Null(entry.Refusal(line, 1, 1));
        Assert.Empty(entry.Elsewhere);
    }

    [Fact]
    public void A_reading_is_refused_at_its_own_box_and_not_where_the_same_words_are_right()
    {
        var entry = Open("spring", "rate");
        var line = entry.Lines[0];
        foreach (var (row, (length, force)) in new[] { ("300", ""), ("310 kg", "100"), ("280", "310 kg") }.Index())
        {
            (line.Cells[row][0], line.Cells[row][1]) = (length, force);
        }

        entry.Look();
        Assert.Contains("310 kg", entry.Refusal(line, 1, 0)!, StringComparison.Ordinal);
        Assert.Null(entry.Refusal(line, 2, 1));
        Assert.Null(entry.Refusal(line, 0, 0));
        Assert.Empty(entry.Elsewhere);
    }

    [Fact]
    public void A_row_that_is_not_whole_is_not_counted_and_what_is_missing_is_named()
    {
        var entry = Open("tilt", "body-height", new() { ["wheelbase"] = ["2.7 m"] });
        Assert.Equal("2.7 m", entry.Lines.Single(line => line.Choice.Name == "wheelbase").Cells[0][0]);
        Assert.Equal("total, level, lifted, angle, radius, unsprung", entry.Waiting);
        var radius = entry.Lines.Single(line => line.Choice.Name == "radius");
        radius.Cells[0][0] = "0.31";
        entry.Look();
        Assert.Equal(1, radius.Halves);
        Assert.Empty(entry.Elsewhere);
    }

    [Fact]
    public void No_worksheet_refuses_anything_before_a_reading_is_typed()
    {
        Dictionary<string, string[]> known = new()
        {
            ["wheelbase"] = ["2.7 m"], ["track"] = ["1.52 m", "1.51 m"], ["tyre"] = ["200 N/mm"], ["unsprung"] = ["160 kg"],
        };
        foreach (var field in CarFile.Form.All.Where(field => field.Path.Count > 0 && FieldSheet.For(field.Path) is not null))
        {
            var sheet = FieldSheet.For(field.Path)!;
            var entry = new WorksheetEntry(sheet, Garage, known);
            Assert.Null(entry.Answer);
            Assert.Empty(entry.Elsewhere);
            Assert.True(entry.Waiting.Length > 0, string.Join('/', field.Path));
        }
    }

    [Fact]
    public void The_height_of_the_body_asks_for_the_unsprung_mass_and_takes_it_from_the_car_where_it_says_so()
    {
        var filled = Filled(FieldSheet.For(["body", "centre-of-gravity-height"])!);
        var unsprung = filled.Lines.Single(line => line.Choice.Name == "unsprung");
        Assert.False(filled.IsOptional(unsprung));
        Assert.NotNull(filled.Value);
        unsprung.Cells[0][0] = "";
        filled.Look();
        Assert.Null(filled.Value);
        Assert.Equal("unsprung", filled.Waiting);
        Assert.Equal("162 ± 10 kg", UnsprungSum.Of("81 kg ± 6", "81 kg ± 8"));
        Assert.Equal("", UnsprungSum.Of("81 kg", "many"));
    }

    [Fact]
    public void A_value_that_a_worksheet_gave_says_so_in_the_file_until_it_is_written_anew()
    {
        var garage = new Garage(Path.Combine(Checkout.Root, "examples", "garage"));
        foreach (var file in new[] { "fern-saloon.yaml", "fern-saloon-springs.yaml" })
        {
            var draft = CarDraft.Of(garage, file, garage.Read(file).Text!);
            string[] path = ["body", "centre-of-gravity-height"];
            var (put, refusal) = draft.PutWorkedOut(path, "0.571 m ± 0.012", "a tilt of 12°, the front lifted");
            Assert.Null(refusal);
            Assert.Matches("centre-of-gravity-height: 0.571 m ± 0.012}? # worked out from a tilt of 12°, the front lifted\n", put.Text);
            Assert.NotNull(put.Reading.Value);
            Assert.Null(put.UnmeasuredBy(path));
            var typed = put.Put(path, Node.Scalar("0.6 m")).Draft;
            Assert.DoesNotContain("worked out", typed.Text, StringComparison.Ordinal);
            Assert.Equal(draft.Put(path, Node.Scalar("0.6 m")).Draft.Text, typed.Text);
        }
    }

    [Theory]
    [InlineData("front:\n  track: 1.5 m\n", 2, "front:\n  track: 1.5 m # worked out from two readings\n")]
    [InlineData("front:\r\n  track: 1.5 m\r\n", 2, "front:\r\n  track: 1.5 m # worked out from two readings\r\n")]
    [InlineData("front: {track: 1.5 m}\n", 1, "front: {track: 1.5 m} # worked out from two readings\n")]
    [InlineData("front: {track: 1.5 m, arm: 1 m}\n", 1, "front: {track: 1.5 m, arm: 1 m}\n")]
    [InlineData("track: 1.5 m # by tape\n", 1, "track: 1.5 m # by tape\n")]
    public void A_line_is_marked_only_where_its_end_is_free(string text, int line, string marked)
    {
        Assert.Equal(marked, WorkedOutLines.Mark(text, line, "two\nreadings"));
        Assert.Equal(text, WorkedOutLines.Without(marked, [line]));
    }

    [Theory]
    [InlineData("front", "rear 560 kg; wheelbase 2.7 m; front track 1.52 m; rear track 1.51 m")]
    [InlineData("front-left", "front right 284.1 kg; rear left 281 kg; rear right 279 kg; wheelbase 2.7 m; front track 1.52 m; rear track 1.51 m")]
    public void A_weighing_gives_the_other_fields_too_and_no_digits_that_nobody_read(string value, string others)
    {
        var entry = Open("weigh", value, new() { ["wheelbase"] = ["2.7 m"], ["track"] = ["1.52 m", "1.51 m"] });
        var round = entry.Lines.Single(line => line.Choice.Name == "round");
        new[] { "298.3126", "284.1", "281", "279" }.CopyTo(round.Cells[0], 0);
        entry.Look();
        Assert.Equal(value == "front" ? "582.4 kg" : "298.3 kg", entry.Value!.Text);
        Assert.Equal(others, string.Join("; ", entry.Others.Select(other => $"{other.Label} {other.Text}")));
        Assert.All(entry.Others, other => Assert.Contains(CarFile.Form.All, field => field.Path.SequenceEqual(other.Path)));
    }

    private static WorksheetEntry Open(string word, string value, Dictionary<string, string[]>? known = null) =>
        new(new FieldSheet(SheetDoor.Named(word), value), Garage, known ?? []);

    // The readings of the sheets' own examples.
    private static WorksheetEntry Filled(FieldSheet sheet)
    {
        var entry = new WorksheetEntry(sheet, Garage, new Dictionary<string, string[]>());
        foreach (var (name, rows) in sheet.Door.Word switch
        {
            "weigh" => new (string, string[][])[]
            {
                ("round", [["381", "362", "311", "306"]]), ("turned", [["379", "364", "313", "304"]]), ("wheelbase", [["2.70"]]),
                ("track", [["1.52", "1.51"]]),
            },
            "tilt" =>
            [
                ("total", [["1360 ± 2"]]), ("level", [["618 ± 1"]]), ("lifted", [["647"]]), ("angle", [["12 ± 0.3"]]), ("wheelbase", [["2.70"]]),
                ("radius", [["0.31", "0.31"]]), ("unsprung", [["162 ± 10"]]),
            ],
            "decay" => [("rest", [["652"]]), ("turn", [["590"], ["675"], ["643"]]), ("wheel-rate", [["21"]]), ("tyre", [["200"]])],
            "spring" => [("pair", [["310", "480"], ["290", "900"], ["270", "1319"], ["250", "1741"]])],
            "ratio" => [("stop", [["-40", "-24.3"], ["-20", "-12.2"], ["0", "0"], ["20", "12.5"], ["40", "25.3"]])],
            _ =>
            [
                ("up", [.. Up.Select(one => new[] { one.Gap, one.Up })]), ("down", [.. Up.Select(one => new[] { one.Gap, one.Down })]),
                ("rest", [["380"]]),
            ],
        })
        {
            var line = entry.Lines.Single(one => one.Choice.Name == name);
            while (line.Cells.Count < rows.Length)
            {
                line.Add();
            }

            foreach (var (row, cells) in rows.Index())
            {
                cells.CopyTo(line.Cells[row], 0);
            }
        }

        entry.Look();
        return entry;
    }

    // A wheel of 22.5 N/mm and 55 N of friction that stands with 3200 N at 380 mm, its stops 52 mm up (60 N/mm) and 47 mm down (40 N/mm).
    private static IEnumerable<(string Gap, string Up, string Down)> Up => Enumerable.Range(0, 9).Select(k => -80.0 + (20.0 * k)).Select(travel =>
    {
        var force = 3200.0 + (22.5 * travel) + (60.0 * Math.Max(0.0, travel - 52.0)) - (40.0 * Math.Max(0.0, -47.0 - travel));
        return (Text(380.0 - travel), Text(force + 55.0), Text(force - 55.0));
    });

    private static string Text(double value) => FormattableString.Invariant($"{value:F0}");
}
