using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Choosing;
using Heaveline.Files.Crews;
using Heaveline.Files.Drives;
using Heaveline.Files.Films;
using Heaveline.Files.Parts;
using Heaveline.Files.Roads;
using Heaveline.Files.Ties;
using Heaveline.Files.Yaml;
using Heaveline.Tests.House;
using Validator = Json.Schema.JsonSchema;

namespace Heaveline.Tests.Files;

/// <summary>
/// The pages and schemas of the file formats under docs/ are made from the shapes that read the files. Run the tests with HEAVELINE_WRITE_DOCS=1 to
/// write them anew after a change.
/// </summary>
public class FilePagesTests
{
    private static readonly JsonSerializerOptions Pretty =
        new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly Validator CarSchema = Validator.FromText(CarFile.Schema.ToJsonString());
    private static readonly Validator VariantSchema = Validator.FromText(CarFile.VariantSchema.ToJsonString());
    private static readonly Validator RoadSchema = Validator.FromText(RoadFile.Schema.ToJsonString());
    private static readonly Validator TiesSchema = Validator.FromText(TieFile.Schema.ToJsonString());

    private static readonly Validator FilmSchema = Validator.FromText(FilmFile.Schema.ToJsonString());

    private static readonly Validator CrewSchema = Validator.FromText(CrewFile.Schema.ToJsonString());

    private static readonly Validator PartsSchema = Validator.FromText(PartsFile.Schema.ToJsonString());

    private static readonly Validator StudySchema = Validator.FromText(StudyFile.Schema.ToJsonString());

    public static TheoryData<string, string> Examples =>
        [.. Files("garage"), .. Files("roads"), .. Files("ties"), .. Files("parts"), .. Files("studies"), .. Files("films"), .. Files("crews")];

    [Theory]
    [InlineData("car-file.schema.json")]
    [InlineData("variant-file.schema.json")]
    [InlineData("road-file.schema.json")]
    [InlineData("ties-file.schema.json")]
    [InlineData("car-file.md")]
    [InlineData("road-file.md")]
    [InlineData("ties-file.md")]
    [InlineData("parts-file.schema.json")]
    [InlineData("parts-file.md")]
    [InlineData("study-file.schema.json")]
    [InlineData("study-file.md")]
    [InlineData("film-file.schema.json")]
    [InlineData("film-file.md")]
    [InlineData("crew-file.schema.json")]
    [InlineData("crew-file.md")]
    [InlineData("drive-file.schema.json")]
    [InlineData("drive-file.md")]
    public void A_page_says_what_the_reader_does(string name)
    {
        var made = name switch
        {
            "car-file.schema.json" => Text(CarFile.Schema),
            "variant-file.schema.json" => Text(CarFile.VariantSchema),
            "road-file.schema.json" => Text(RoadFile.Schema),
            "ties-file.schema.json" => Text(TieFile.Schema),
            "ties-file.md" => Page("The sheet of ties", "fern-saloon-hump.yaml", "ties-file.schema.json", TieFile.KeyPage),
            "parts-file.schema.json" => Text(PartsFile.Schema),
            "parts-file.md" => Page("The list of parts", "village-autumn.yaml", "parts-file.schema.json", PartsFile.KeyPage),
            "study-file.schema.json" => Text(StudyFile.Schema),
            "study-file.md" => Page("The study of what to buy", "fern-four-up.yaml", "study-file.schema.json", StudyFile.KeyPage),
            "film-file.schema.json" => Text(FilmFile.Schema),
            "film-file.md" => Page("The film file", "grey-saloon-25.yaml", "film-file.schema.json", FilmFile.KeyPage),
            "crew-file.schema.json" => Text(CrewFile.Schema),
            "crew-file.md" => Page("The crew file", "suspension-lab.yaml", "crew-file.schema.json", CrewFile.KeyPage),
            "drive-file.schema.json" => Text(DriveFile.Schema),
            "drive-file.md" => DrivePage,
            "car-file.md" => Page("The car file", "fern-saloon.yaml", "car-file.schema.json", CarFile.KeyPage),
            _ => Page("The road file", "village-hump.yaml", "road-file.schema.json", RoadFile.KeyPage),
        };
        var path = Path.Combine(Checkout.Root, "docs", name);
        if (Environment.GetEnvironmentVariable("HEAVELINE_WRITE_DOCS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            WholeFile.Write(path, System.Text.Encoding.UTF8.GetBytes(made));
        }

        Assert.Equal(made, File.ReadAllText(path).ReplaceLineEndings("\n"));
    }

    [Theory, MemberData(nameof(Examples))]
    public void Every_example_is_valid_by_its_schema(string folder, string file)
    {
        var reader = new Reader(SourceText.Load(Path.Combine(Checkout.Root, "examples", folder, file), 1 << 20).Source);
        var document = Json(YamlTree.Of(reader)!);
        var schema = folder == "roads" ? RoadSchema : folder == "ties" ? TiesSchema : folder == "parts" ? PartsSchema
            : folder == "studies" ? StudySchema : folder == "films" ? FilmSchema : folder == "crews" ? CrewSchema
            : document["variant"] is null ? CarSchema : VariantSchema;
        Assert.True(schema.Evaluate(JsonDocument.Parse(document.ToJsonString()).RootElement).IsValid);
    }

    [Theory]
    [InlineData("wheelbase: 2.50 m", "wheelbase: 2.50")]
    [InlineData("spring-per-wheel: 0.90", "spring-per-wheel: 0.90 mm")]
    [InlineData("wheel-rate: 17 N/mm", "wheel-rate: 17 N/mm, rate: 20 N/mm")]
    [InlineData("  track: 1.45 m", "  trakc: 1.45 m")]
    [InlineData("[0.1 m/s, 120 N]", "[0.1 m/s, 120 N, 3]")]
    public void The_schema_marks_what_the_reader_refuses(string old, string slip)
    {
        bool IsValid(string text) =>
            CarSchema.Evaluate(JsonDocument.Parse(Json(YamlTree.Of(new Reader(new SourceText("t", text)))!).ToJsonString()).RootElement).IsValid;
        Assert.True(IsValid(TextCar.Sound));
        Assert.False(IsValid(TextCar.With(old, slip)));
    }

    [Fact]
    public void Every_key_has_a_sound_example_or_is_a_group_of_such()
    {
        var waiting = new Queue<Shape>(
        [
            CarWords.Shape.Layout, RoadWords.Shape.Layout, DriveWords.Shape.Layout, PartsListWords.Shape.Layout, StudyWords.Shape.Layout,
            CrewWords.Shape.Layout,
        ]);
        var seen = new HashSet<Shape>();
        while (waiting.TryDequeue(out var shape))
        {
            foreach (var key in shape.Keys)
            {
                Assert.True(key.Sample() is not null, $"{shape.Name}: {key.Name}");
                if (key.Kind.Group is { } group && seen.Add(group))
                {
                    waiting.Enqueue(group);
                }
            }
        }
    }

    private static string Text(JsonObject schema) => schema.ToJsonString(Pretty) + "\n";

    private static string Page(string title, string example, string schema, string keys) =>
        $"# {title}\n\nMade from the reader itself; do not edit. Example: `{example}` under `examples/`. For editors: [{schema}]({schema}).\n"
        + "Every dimensioned value carries its unit and may carry its doubt (`± 5 %`, `± 2 kg`), the half-width of the interval that holds the true "
        + "value 19 times out of 20.\n\n" + keys;

    private static string DrivePage =>
        "# The file of a drive\n\nMade from the reader itself; do not edit. It is `drive.yaml` in a folder of its own under `drives/` of the garage; "
        + "the files of the log lie beside it\nand stay as they were brought in. For editors: [drive-file.schema.json](drive-file.schema.json).\n\n"
        + DriveFile.KeyPage;

    // As an editor's YAML server sees it: plain numbers and true are not text.
    private static JsonNode Json(Node node) => node.Kind switch
    {
        NodeKind.Mapping => new JsonObject(node.Entries.Select(entry => KeyValuePair.Create(entry.Key, (JsonNode?)Json(entry.Value)))),
        NodeKind.Sequence => new JsonArray([.. node.Items.Select(Json)]),
        _ when node.IsPlain && node.Text is "true" or "false" => JsonValue.Create(node.Text == "true"),
        _ when node.IsPlain && double.TryParse(
            node.Text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var number) =>
            JsonValue.Create(number),
        _ => JsonValue.Create(node.Text),
    };

    private static IEnumerable<TheoryDataRow<string, string>> Files(string folder) =>
        Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", folder), "*.yaml")
            .Order(StringComparer.Ordinal).Select(path => new TheoryDataRow<string, string>(folder, Path.GetFileName(path)));
}
