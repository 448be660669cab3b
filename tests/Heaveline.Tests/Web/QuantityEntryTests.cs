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
    public void Another_unit_keeps_the_quantity_and_its_doubt()
    {
        var field = CarFile.Form.At("front", "spring", "rate")!;
        var entry = new QuantityEntry(field);
        entry.Take("24.5 N/mm ± 0.5");
        entry.ChangeUnit("lbf/in");
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

        // Another unit keeps both, whatever its digits are written with.
        entry.ChangeUnit("mm");
        Assert.Equal("mm", entry.Unit);
        Assert.Equal(read.HalfWidth, field.Quantity.Split(entry.Text).HalfWidth, read.HalfWidth * 0.02);
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
