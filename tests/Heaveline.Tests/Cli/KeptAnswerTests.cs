using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.Cli;

public class KeptAnswerTests
{
    // Relative; below the floor a number is the rounding of a zero.
    private const double Tolerance = 1e-6;
    private const double Floor = 1e-9;

    // The program's estimate of its own error is a difference of nearly equal numbers: its own digits are few.
    private const double ErrorTolerance = 1e-2;

    public static TheoryData<string> Cars => [.. KeptAnswers.Cars];

    [Theory, MemberData(nameof(Cars))]
    public void An_example_car_is_described_as_before(string car) => Same($"describe examples/garage/{car}.yaml --json", $"{car}.describe.json");

    [Theory, MemberData(nameof(Cars))]
    public void An_example_car_crosses_its_road_as_before(string car) =>
        Same($"pass examples/garage/{car}.yaml {KeptAnswers.Passes[car]} --json", $"{car}.pass.json");

    [Theory]
    [InlineData("fern-four-up")]
    [InlineData("fern-front-springs")]
    public void A_study_is_answered_as_before(string study) =>
        Same($"choose examples/studies/{study}.yaml --json", $"fern-saloon.choose.{study}.json");

    [Fact]
    public void No_answer_is_kept_of_a_car_that_is_gone()
    {
        Directory.CreateDirectory(KeptAnswers.Folder);
        var gone = Directory.EnumerateFiles(KeptAnswers.Folder).Where(f => !KeptAnswers.Cars.Contains(Path.GetFileName(f).Split('.')[0])).ToList();
        if (KeptAnswers.Renew)
        {
            gone.ForEach(File.Delete);
            return;
        }

        Assert.Empty(gone);
    }

    [Theory]
    [InlineData("{\"a\": [1.0]}", "{\"a\": [1.000002]}")]
    [InlineData("{\"a\": [1.0]}", "{\"a\": [null]}")]
    [InlineData("{\"a\": [1.0]}", "{\"a\": [1.0, 2.0]}")]
    [InlineData("{\"a\": 1.0}", "{\"b\": 1.0}")]
    [InlineData("{\"a\": \"the rear stop\"}", "{\"a\": \"the front stop\"}")]
    [InlineData("{\"a\": true}", "{\"a\": false}")]
    public void A_changed_answer_is_noticed(string kept, string now) =>
        Assert.NotEmpty(Differences(JsonNode.Parse(kept), JsonNode.Parse(now), "", Tolerance));

    private static void Same(string line, string file)
    {
        var path = Path.Combine(KeptAnswers.Folder, file);
        var said = Spoken.Typed(line);
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        var kept = File.Exists(path) ? File.ReadAllText(path) : null;
        List<string> differences = kept is null
            ? ["It is not kept yet."]
            : [.. Differences(JsonNode.Parse(kept), JsonNode.Parse(said.Results), "", Tolerance)];
        if (KeptAnswers.Renew && differences.Count > 0)
        {
            // Only what fails: another processor's last digit is no change.
            Directory.CreateDirectory(KeptAnswers.Folder);
            File.WriteAllText(path, said.Results);
            return;
        }

        Assert.True(
            differences.Count == 0,
            $"{file}: the answer has changed; docs/answers.md says how it may and how to renew it.\n{string.Join('\n', differences)}");
    }

    private static IEnumerable<string> Differences(JsonNode? kept, JsonNode? now, string where, double tolerance)
    {
        switch (kept, now)
        {
            case (JsonObject a, JsonObject b):
                var near = a["key"]?.GetValue<string>().StartsWith("error-", StringComparison.Ordinal) == true ? ErrorTolerance : tolerance;
                return a.Select(p => p.Key).Union(b.Select(p => p.Key))
                    .Where(key => key != "heaveline").SelectMany(key => Differences(a[key], b[key], $"{where}/{key}{Named(a[key])}", near));
            case (JsonArray a, JsonArray b) when a.Count == b.Count:
                return a.Zip(b).SelectMany((pair, k) => Differences(pair.First, pair.Second, $"{where}/{k}{Named(pair.First)}", tolerance));
            case (JsonValue a, JsonValue b) when a.TryGetValue<double>(out var x) && b.TryGetValue<double>(out var y):
                return Math.Abs(x - y) <= Math.Max(Floor, tolerance * Math.Max(Math.Abs(x), Math.Abs(y)))
                    ? []
                    : [FormattableString.Invariant($"{where}: {x:R} was kept, {y:R} is answered")];
            case (JsonValue a, JsonValue b) when a.TryGetValue<string>(out var x) && b.TryGetValue<string>(out var y):
                return Words(x) == Words(y) ? [] : [$"{where}: '{x}' was kept, '{y}' is answered"];
            case (JsonValue a, JsonValue b) when a.TryGetValue<bool>(out var x) && b.TryGetValue<bool>(out var y) && x == y:
                return [];
            case (null, null):
                return [];
            default:
                return [$"{where}: '{kept?.ToJsonString()}' was kept, '{now?.ToJsonString()}' is answered"];
        }
    }

    private static string Named(JsonNode? row) => row is JsonObject o && o["key"] is { } key ? $" ({key})" : "";

    // Rounded numbers inside sentences may tip over; the tables hold them unrounded.
    private static string Words(string sentence) => Regex.Replace(sentence, @"[\d.−-]+", "#");
}
