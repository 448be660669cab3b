using Heaveline.Files.Cars;
using Heaveline.Web.Pages.Cars;

namespace Heaveline.Tests.Web;

public class QuantityEntryTests
{
    [Fact]
    public void Every_quantity_of_the_form_goes_through_its_fields_unchanged()
    {
        var told = CarFile.Form.All.Where(field => field.Quantity is not null && field.Example.Length > 0).ToList();
        Assert.True(told.Count > 60);
        Assert.All(told, field =>
        {
            var entry = new QuantityEntry(field);
            entry.Take(field.Example);
            Assert.Equal(field.Quantity!.Split(field.Example).Si, field.Quantity.Split(entry.Text).Si);
            Assert.Equal(field.Quantity.Split(field.Example).HalfWidth, field.Quantity.Split(entry.Text).HalfWidth);
        });
    }

    [Fact]
    public void A_unit_is_converted_to_when_asked_and_keeps_the_quantity_and_its_doubt()
    {
        var field = CarFile.Form.At("front", "spring", "rate")!;
        var entry = new QuantityEntry(field);
        entry.Take("24.5 N/mm ± 0.5");
        entry.ChooseUnit("lbf/in");
        entry.Convert();
        // 1 lbf/in = 0.45359237 × 9.80665 / 0.0254 N/m (international yard and pound, 1959; CGPM 1901).
        Assert.Equal(24500.0 / (0.45359237 * 9.80665 / 0.0254), double.Parse(entry.Number, System.Globalization.CultureInfo.InvariantCulture), 0.01);
        Assert.Equal(24500.0, field.Quantity!.Split(entry.Text).Si, 24500.0 * 1e-4);
        Assert.Equal(500.0, field.Quantity.Split(entry.Text).HalfWidth, 500.0 * 0.02);
        Assert.Contains("lbf/in", entry.Units);
    }

    [Fact]
    public void What_is_typed_stays_until_the_file_says_something_else()
    {
        var entry = new QuantityEntry(CarFile.Form.At("wheelbase")!);
        entry.Take("2.70 m ± 5 mm");
        Assert.Equal(("2.70", "m", "5", "mm"), (entry.Number, entry.Unit, entry.Doubt, entry.DoubtUnit));
        entry.Number = "2.7x";
        entry.Take(entry.Text);
        Assert.Equal(("2.7x", "m", "5", "mm"), (entry.Number, entry.Unit, entry.Doubt, entry.DoubtUnit));
        entry.Take("9 ft ± 1 in");
        Assert.Equal(("9", "ft", "1", "in"), (entry.Number, entry.Unit, entry.Doubt, entry.DoubtUnit));
    }

    [Fact]
    public void An_empty_field_begins_with_the_unit_of_its_example_and_writes_nothing()
    {
        var entry = new QuantityEntry(CarFile.Form.At("front", "spring", "rate")!);
        entry.Take("");
        Assert.Equal("N/mm", entry.Unit);
        Assert.Equal("", entry.Text);
        entry.Number = "24";
        Assert.Equal("24 N/mm", entry.Text);
    }

    [Fact]
    public void Per_cent_of_a_number_in_per_cent_are_points()
    {
        var entry = new QuantityEntry(CarFile.Form.At("brakes", "front-share")!);
        entry.Take("68 % ± 4");
        Assert.Equal(("68", "%", "4", ""), (entry.Number, entry.Unit, entry.Doubt, entry.DoubtUnit));
        Assert.DoesNotContain("%", entry.DoubtUnits);
        Assert.Equal("68 % ± 4", entry.Text);
    }

    [Theory]
    [InlineData("100,4 in ± 0,2 in", "100,4", "0,2", "in")]
    [InlineData("100.4 in ± 0,5 %", "100.4", "0,5", "%")]
    [InlineData("100,4 in +/- 1,5e0 mm", "100,4", "1,5e0", "mm")]
    [InlineData("100,4 ± 0,2 in", "100,4", "0,2", "")]
    public void A_decimal_comma_is_read_in_the_form_as_in_the_file(string text, string number, string doubt, string doubtUnit)
    {
        var field = CarFile.Form.At("wheelbase")!;
        var entry = new QuantityEntry(field);
        entry.Take(text);
        Assert.Equal((number, "in", doubt, doubtUnit), (entry.Number, entry.Unit, entry.Doubt, entry.DoubtUnit));
        var (read, written) = (field.Quantity!.Split(text), field.Quantity.Split(entry.Text));
        Assert.Equal((read.Si, read.HalfWidth), (written.Si, written.HalfWidth));

        // Put into another unit it keeps both, whatever its digits are written with.
        entry.ChooseUnit("mm");
        entry.Convert();
        Assert.Equal("mm", entry.Unit);
        Assert.Equal(read.HalfWidth, field.Quantity.Split(entry.Text).HalfWidth, read.HalfWidth * 0.02);
    }

    [Fact]
    public void A_chosen_unit_leaves_the_digits_and_offers_what_they_were()
    {
        var field = CarFile.Form.At("front", "spring", "rate")!;
        var entry = new QuantityEntry(field);
        entry.Take("24.5 N/mm");
        entry.Number = "130";
        entry.ChooseUnit("lbf/in");
        Assert.Equal("130 lbf/in", entry.Text);
        // 130 N/mm over 0.45359237 × 9.80665 / 0.0254 N/m (international yard and pound, 1959; CGPM 1901).
        Assert.Equal(("130", "N/mm", "742.3", "lbf/in"), (entry.Here!.Number, entry.Here.Unit, entry.Elsewhere!.Number, entry.Elsewhere.Unit));
        entry.ChooseUnit("kgf/mm");
        Assert.Equal("N/mm", entry.Here!.Unit);
        entry.ChooseUnit("N/mm");
        Assert.Null(entry.Elsewhere);
        entry.ChooseUnit("lbf/in");
        entry.Number = "131";
        Assert.Null(entry.Elsewhere);
        Assert.Equal("131 lbf/in", entry.Text);
    }

    [Theory]
    [InlineData("front/spring/rate", "160 lbf/in", "160", "lbf/in", "", "")]
    [InlineData("front/spring/rate", "160 lb/in", "160", "lb/in", "", "")]
    [InlineData("front/spring/rate", " 22,5 N/mm ", "22,5", "N/mm", "", "")]
    [InlineData("front/spring/rate", "24.5 ± 0.5 N/mm", "24.5", "N/mm", "0.5", "")]
    [InlineData("front/spring/rate", "160 lbf/in ± 5 %", "160", "lbf/in", "5", "%")]
    [InlineData("wheelbase", "106 3/4 in", "106.75", "in", "", "")]
    [InlineData("wheelbase", "2¾ in", "2.75", "in", "", "")]
    [InlineData("wheelbase", "106-3/4 in ± 1/16", "106.75", "in", "0.0625", "")]
    [InlineData("wheelbase", "2 3/4", "2.75", "m", "", "")]
    public void A_whole_quantity_counts_as_typed_and_is_taken_apart_when_the_hand_has_left(
        string path, string typed, string number, string unit, string doubt, string doubtUnit)
    {
        var field = CarFile.Form.At(path.Split('/'))!;
        var entry = new QuantityEntry(field);
        entry.Take(path == "wheelbase" ? "2.70 m" : "20.7 N/mm");
        entry.Number = typed;
        Assert.Null(field.Quantity!.Split(entry.Text).Refusal);
        var (si, text) = (field.Quantity.Split(entry.Text).Si, entry.Text);
        entry.Take(text);
        Assert.Equal(typed, entry.Number);
        entry.Rest();
        entry.Take(text);
        Assert.Equal(unit, entry.Unit);
        Assert.Equal((doubt, doubtUnit), (entry.Doubt, entry.DoubtUnit));
        Assert.Equal(number, entry.Number);
        Assert.Equal(si, field.Quantity.Split(entry.Text).Si);
        Assert.Contains(unit, entry.Units);
    }

    [Fact]
    public void A_doubt_keeps_the_unit_that_it_had_when_another_quantity_is_typed_before_it()
    {
        var entry = new QuantityEntry(CarFile.Form.At("front", "spring", "rate")!);
        entry.Take("24.5 N/mm ± 0.5");
        entry.Number = "160 lbf/in";
        Assert.Equal("160 lbf/in ± 0.5 N/mm", entry.Text);
        entry.Doubt = "± 4 lbf/in";
        Assert.Equal("160 lbf/in ± 4 lbf/in", entry.Text);
        entry.Rest();
        Assert.Equal(("160", "lbf/in", "4", "lbf/in"), (entry.Number, entry.Unit, entry.Doubt, entry.DoubtUnit));
    }

    [Theory]
    [InlineData("160 lb", "160 lb is")]
    [InlineData("fast", "\"fast\" is not a number")]
    [InlineData("160 lbf/in N/mm", "")]
    [InlineData("1,320", "1,320 is not a number here")]
    [InlineData("2 1/3 N/mm", "2 1/3 is a fraction")]
    public void What_is_refused_is_what_was_typed(string typed, string words)
    {
        var field = CarFile.Form.At("front", "spring", "rate")!;
        var entry = new QuantityEntry(field);
        entry.Take("20.7 N/mm ± 4 %");
        entry.Number = typed;
        Assert.StartsWith(typed, entry.Text, StringComparison.Ordinal);
        Assert.StartsWith(words, field.Quantity!.Split(entry.Text).Refusal!.Message, StringComparison.Ordinal);
        entry.Rest();
        Assert.Equal(typed, entry.Number);
    }

    [Fact]
    public void A_reader_of_imperial_units_begins_in_them_and_is_offered_them_elsewhere()
    {
        var field = CarFile.Form.At("front", "spring", "rate")!;
        var entry = new QuantityEntry(field, Heaveline.Quantities.ReaderUnits.Imperial);
        entry.Take("");
        Assert.Equal("lbf/in", entry.Unit);
        entry.Take("20.7 N/mm");
        Assert.Equal("20.7 N/mm", entry.Text);
        // 20.7 N/mm over 0.45359237 × 9.80665 / 0.0254 N/m.
        Assert.Equal("118.2", entry.Elsewhere!.Number);
        entry.Convert();
        Assert.Equal("118.2 lbf/in", entry.Text);
        Assert.Null(entry.Elsewhere);
        Assert.Equal("in", Began("wheelbase"));
        Assert.Equal("lb", Began("weighing", "front"));
        Assert.Equal("slug ft²", Began("body", "roll-inertia"));

        static string Began(params string[] path)
        {
            var empty = new QuantityEntry(CarFile.Form.At(path)!, Heaveline.Quantities.ReaderUnits.Imperial);
            empty.Take("");
            return empty.Unit;
        }
    }

    [Fact]
    public void What_is_typed_beside_a_decimal_comma_leaves_the_rest_as_it_was()
    {
        var entry = new QuantityEntry(CarFile.Form.At("wheelbase")!);
        entry.Take("100,4 in ± 0,2 in");
        entry.Doubt = "0.3";
        Assert.Equal("100,4 in ± 0.3 in", entry.Text);
        entry.Take("100,4 in ± 0,2 in");
        entry.Number = "101,5";
        Assert.Equal("101,5 in ± 0.3 in", entry.Text);
        entry.Doubt = "0,2";
        entry.DoubtUnit = "mm";
        Assert.Equal("101,5 in ± 0,2 mm", entry.Text);
    }
}
