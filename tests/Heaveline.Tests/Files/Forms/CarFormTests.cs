using System.Text.Json.Nodes;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Forms;

public class CarFormTests
{
    [Fact]
    public void Every_key_of_the_page_of_the_format_is_a_field_with_its_sentence()
    {
        var fields = CarFile.Form.All.Concat(CarFile.VariantForm.All).ToList();
        var rows = File.ReadLines(Path.Combine(Checkout.Root, "docs", "car-file.md"))
            .Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Split(" | ")).ToList();
        Assert.True(rows.Count > 90);
        Assert.All(rows, row => Assert.Contains(
            fields,
            field => field.Name == row[0].Trim('|', ' ', '`') && field.Meaning == row[2].Replace("\\|", "|", StringComparison.Ordinal)
                && field.IsRequired == (row[1] == "yes")));
        Assert.Equal(
            rows.Select(row => row[0].Trim('|', ' ', '`')).ToHashSet(),
            fields.Select(field => field.Name).Where(name => name is not ("" or FormField.Any)).ToHashSet());
    }

    [Theory]
    [InlineData("wheelbase", FieldKind.Quantity, "length", "between 0.5 and 10 m", 0.5, 10.0)]
    [InlineData("front/spring/rate", FieldKind.Quantity, "spring rate", "above 0 N/mm", 0.0, null)]
    [InlineData("rear/spring/spring-per-wheel", FieldKind.Number, "a plain number", "above 0 and at most 2", 0.0, 2.0)]
    [InlineData("front/tyre/damping", FieldKind.Quantity, "damping rate", "0 N s/m or above", 0.0, null)]
    [InlineData("front/bump-stop/exponent", FieldKind.Number, "a plain number", "between 1 and 5", 1.0, 5.0)]
    [InlineData("headlamp/drop", FieldKind.Number, "a plain number", "between 0 and 0.1", 0.0, 0.1)]
    [InlineData("headlamp/ahead", FieldKind.Quantity, "length", "between -2 and 4 m", -2.0, 4.0)]
    [InlineData("weighing/front", FieldKind.Quantity, "mass", "above 0 kg", 0.0, null)]
    [InlineData("front/damper/damping-ratio", FieldKind.Number, "a plain number", "between 0 and 3", 0.0, 3.0)]
    [InlineData("loads/four up/2/height", FieldKind.Quantity, "length", "between 0 and 5 m", 0.0, 5.0)]
    [InlineData("seats/anybody/height", FieldKind.Quantity, "length", "between 0 and 4 m", 0.0, 4.0)]
    [InlineData("front/spring/leaf/graduated-leaves", FieldKind.Count, null, "a whole number from 0 to 50", 0.0, 50.0)]
    [InlineData("kind", FieldKind.Word, null, null, null, null)]
    [InlineData("front/spring/moves", FieldKind.Phrase, null, null, null, null)]
    [InlineData("front/damper/bump", FieldKind.Table, null, null, null, null)]
    [InlineData("front/spring/sweep", FieldKind.Table, null, null, null, null)]
    [InlineData("front/bump-stop", FieldKind.Group, null, null, null, null)]
    [InlineData("loads", FieldKind.Names, null, null, null, null)]
    [InlineData("loads/driver", FieldKind.List, null, null, null, null)]
    [InlineData("note", FieldKind.Text, null, null, null, null)]
    public void A_field_knows_how_its_value_is_entered_and_its_limits(
        string path, FieldKind kind, string? dimension, string? limit, double? least, double? most)
    {
        var field = CarFile.Form.At(path.Split('/'))!;
        Assert.Equal(kind, field.Kind);
        Assert.Equal(dimension, field.Quantity?.Dimension);
        Assert.Equal(limit, field.Limit);
        Assert.Equal(least, field.Least);
        Assert.Equal(most, field.Most);
        Assert.Equal(field.Path, CarFile.VariantForm.At(["change", .. path.Split('/')])!.Path.Skip(1));
    }

    [Fact]
    public void Units_come_with_their_conversion_words_with_their_choices_and_tables_with_their_columns()
    {
        // The pound-force per inch: 0.45359237 × 9.80665 / 0.0254 N/m (international yard and pound, 1959; CGPM 1901).
        Assert.Equal(
            0.45359237 * 9.80665 / 0.0254,
            CarFile.Form.At("front", "spring", "rate")!.Quantity!.Units.Single(unit => unit.Symbol == "lbf/in").Factor,
            1e-9);
        Assert.Equal(["", "%"], CarFile.Form.At("body", "pitch-index")!.Quantity!.Units.Select(unit => unit.Symbol));
        Assert.Equal(["independent", "solid-axle"], CarFile.Form.At("rear", "suspension")!.Words);
        Assert.Equal(["speed", "force"], CarFile.Form.At("rear", "damper", "rebound")!.Columns.Select(column => column.Quantity!.Dimension));
        Assert.Equal(["rate", "wheel-rate", "table", "coil", "leaf", "torsion-bar", "gas"], CarFile.Form.At("front", "spring", "gas")!.OneOf);
        Assert.Equal("centre of gravity height", CarFile.Form.At("body", "centre-of-gravity-height")!.Label);
        Assert.Null(CarFile.Form.At("body", "nonsense"));
    }

    [Fact]
    public void Every_limit_is_what_a_file_with_a_value_outside_is_refused_for()
    {
        // The sample values of the keys lie inside the limits that are told.
        var told = CarFile.Form.All.Where(field => field.Limit is not null && field.Quantity is not null).ToList();
        Assert.True(told.Count > 60, $"{told.Count}");
        Assert.All(told.Where(field => field.Example.Length > 0), field =>
        {
            var example = field.Quantity!.Split(field.Example);
            Assert.Null(example.Refusal);
            Assert.True(
                example.Si >= (field.Least ?? double.NegativeInfinity) && example.Si <= (field.Most ?? double.PositiveInfinity),
                $"{string.Join("/", field.Path)}: {field.Example}, {field.Limit}");
        });
    }

    [Fact]
    public void A_value_at_a_limit_of_the_form_is_taken_and_one_beyond_it_is_refused_in_the_words_of_the_form()
    {
        var tried = new HashSet<string>();
        foreach (var path in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml"))
        {
            var text = File.ReadAllText(path);
            if (CarFile.Load(path) is { Root: { } root, Sources.Count: 1 })
            {
                Walk(root, [], text);
            }
        }

        Assert.True(tried.Count > 40, $"{tried.Count}");

        void Walk(Node node, string[] path, string text)
        {
            var field = CarFile.Form.At(path)!;
            if (field is { Quantity: { } quantity, Limit: { } limit } && tried.Add(string.Join("/", field.Path)))
            {
                // A thousandth of a unit, or of the limit, beyond.
                bool Refuses(double si, double by) => IsRefused(text, path, FormattableString.Invariant(
                    $"{(si + (by * Math.Max(1e-3, 1e-3 * Math.Abs(si)))) / quantity.Units[0].Factor:R} {quantity.Units[0].Symbol}"), limit);
                Assert.Equal((field.IsOpenBelow, true), (Refuses(field.Least!.Value, 0.0), Refuses(field.Least.Value, -1.0)));
                if (field.Most is { } most)
                {
                    Assert.Equal((false, true), (Refuses(most, -1.0), Refuses(most, 1.0)));
                }
            }

            foreach (var entry in node.Entries)
            {
                Walk(entry.Value, [.. path, entry.Key], text);
            }

            foreach (var (i, item) in field.Kind == FieldKind.Table ? [] : node.Items.Index())
            {
                Walk(item, [.. path, $"{i + 1}"], text);
            }
        }

        static bool IsRefused(string text, string[] path, string value, string limit) =>
            CarFile.Read(new SourceText("car.yaml", CarFile.Edit(text, KeyEdit.Put(path, Node.Scalar(value.TrimEnd()))).Text!))
                .Refusals.Any(refusal => refusal.Message.EndsWith($" is {value.TrimEnd()}; it must be {limit}.", StringComparison.Ordinal));
    }

    [Fact]
    public void Whole_numbers_have_the_same_limits_in_the_form_in_the_schema_and_in_words()
    {
        var counts = CarFile.Form.All.Where(field => field.Kind == FieldKind.Count).ToList();
        Assert.NotEmpty(counts);
        Assert.All(counts, field =>
        {
            JsonNode? at = CarFile.Schema;
            foreach (var key in field.Path)
            {
                at = at!["$ref"] is { } reference ? CarFile.Schema["$defs"]![reference.GetValue<string>().Split('/')[^1]] : at;
                at = at!["properties"]![key];
            }

            Assert.Equal((field.Least, field.Most), (at!["minimum"]!.GetValue<int>(), at["maximum"]!.GetValue<int>()));
            Assert.Equal(FormattableString.Invariant($"a whole number from {field.Least} to {field.Most}"), field.Limit);
        });
    }

    [Fact]
    public void Every_value_of_the_example_cars_has_a_field_that_takes_it()
    {
        foreach (var path in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml"))
        {
            Walk(CarFile.Load(path).Root!, []);
        }

        static void Walk(Node node, string[] path)
        {
            var field = CarFile.Form.At(path)!;
            Assert.True(field.Kind is FieldKind.Group or FieldKind.Names == (node.Kind == NodeKind.Mapping), string.Join("/", path));
            Assert.True(field.Kind is FieldKind.Table or FieldKind.List == (node.Kind == NodeKind.Sequence), string.Join("/", path));
            if (field.Kind == FieldKind.Table)
            {
                Assert.All(
                    node.Items,
                    row => Assert.All(row.Items.Zip(field.Columns), cell => Assert.Null(cell.Second.Quantity!.Split(cell.First.Text).Refusal)));
                return;
            }

            if (field.Quantity is { } quantity)
            {
                Assert.Null(quantity.Split(node.Text).Refusal);
            }

            foreach (var entry in node.Entries)
            {
                Walk(entry.Value, [.. path, entry.Key]);
            }

            for (var i = 0; i < node.Items.Count; i++)
            {
                Walk(node.Items[i], [.. path, $"{i + 1}"]);
            }
        }
    }
}
