using System.Text.Json;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Validator = Json.Schema.JsonSchema;

namespace Heaveline.Tests.Files;

public class JsonSchemaTests
{
    private const string Sound = """
        { "title": "A", "springs": [ { "rate": "20 N/mm", "free-length": "3 in", "at": "wheel" } ], "warm": true, "turns": 12,
          "table": [["0.1 m/s", "250 N"], ["0.3 m/s", "600 N"]], "loads": { "driver": "80 kg" }, "friction": 0.1 }
        """;

    private static readonly Validator Bench = Validator.FromText(JsonSchema.Of(Sample.Bench.Layout).ToJsonString());

    [Fact]
    public void A_sound_document_is_valid() => Assert.True(IsValid(Bench, Sound));

    [Theory]
    [InlineData("\"title\": \"A\", ", "")]
    [InlineData("\"title\"", "\"titel\"")]
    [InlineData("20 N/mm", "20")]
    [InlineData("20 N/mm", "1,320 N/m")]
    [InlineData("\"20 N/mm\"", "20")]
    [InlineData("wheel", "whel")]
    [InlineData("true", "\"yes\"")]
    [InlineData("12", "100")]
    [InlineData(", \"250 N\"", "")]
    [InlineData("0.1 }", "\"0.1 mm\" }")]
    public void A_slip_is_not_valid(string sound, string slip)
    {
        Assert.Contains(sound, Sound, StringComparison.Ordinal);
        Assert.False(IsValid(Bench, Sound.Replace(sound, slip, StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("""{ "wire": "2 mm" }""", true)]
    [InlineData("""{ "strip": "2 mm" }""", true)]
    [InlineData("""{ "wire": "2 mm", "strip": "2 mm" }""", false)]
    [InlineData("{}", false)]
    public void Exactly_one_of_some_keys_is_valid(string document, bool isValid) =>
        Assert.Equal(isValid, IsValid(Validator.FromText(JsonSchema.Of(Sample.Stock.Layout).ToJsonString()), document));

    [Theory]
    [InlineData("24.5 N/mm ± 5 %")]
    [InlineData("24.5 ± 0.5 N/mm")]
    [InlineData("-1.8e3N/m")]
    [InlineData(".5 N/mm +/- 3")]
    [InlineData("140 lb/in")]
    public void What_the_reader_takes_the_schema_takes(string text)
    {
        Assert.True(QuantityText.Parse<Stiffness>(text).IsRead);
        Assert.True(IsValid(Bench, Sound.Replace("20 N/mm", text, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_group_is_written_once_and_a_key_carries_its_meaning_and_example()
    {
        var schema = JsonSchema.Of(Sample.Bench.Layout);
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", schema["$schema"]!.GetValue<string>());
        Assert.Equal("#/$defs/spring", schema["properties"]!["spare"]!["$ref"]!.GetValue<string>());
        Assert.Equal("#/$defs/spring", schema["properties"]!["springs"]!["items"]!["$ref"]!.GetValue<string>());
        Assert.Equal("spring", Assert.Single(schema["$defs"]!.AsObject()).Key);
        var rate = schema["$defs"]!["spring"]!["properties"]!["rate"]!;
        Assert.StartsWith(
            "Rate of one spring. A spring rate with its unit; units that fit: N/mm, N/m",
            rate["description"]!.GetValue<string>(),
            StringComparison.Ordinal);
        Assert.Equal("24.5 N/mm ± 5 %", rate["examples"]![0]!.GetValue<string>());
        Assert.Equal(["title", "springs"], schema["required"]!.AsArray().Select(name => name!.GetValue<string>()));
    }

    [Fact]
    public void Two_shapes_of_one_name_are_a_programmers_error()
    {
        var one = new Shape("twin", "One.", Sample.Wire).As(f => "one");
        var other = new Shape("twin", "Other.", Sample.Strip).As(f => "other");
        var both = new Shape("both", "Both.", Key.Required("one", "One.", one), Key.Required("other", "Other.", other));
        Assert.Throws<InvalidOperationException>(() => JsonSchema.Of(both));
    }

    [Fact]
    public void A_shape_with_a_key_twice_is_a_programmers_error() =>
        Assert.Throws<ArgumentException>(() => new Shape("s", "m", Sample.Wire, Sample.Wire));

    private static bool IsValid(Validator schema, string document) => schema.Evaluate(JsonDocument.Parse(document).RootElement).IsValid;
}
