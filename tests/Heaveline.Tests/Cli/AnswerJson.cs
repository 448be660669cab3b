using System.Text.Json.Nodes;

namespace Heaveline.Tests.Cli;

/// <summary>What a command wrote with --json.</summary>
internal sealed class AnswerJson
{
    public AnswerJson(Spoken said)
    {
        Assert.Equal((0, ""), (said.Code, said.Remarks));
        Root = JsonNode.Parse(said.Results)!.AsObject();
    }

    public JsonObject Root { get; }

    /// <summary>The rows of all tables, in their order.</summary>
    public IEnumerable<(string Label, string Unit, double?[] Values)> Rows =>
        from table in Root["tables"]!.AsArray()
        from row in table!["rows"]!.AsArray()
        select (row!["label"]!.GetValue<string>(), row["unit"]!.GetValue<string>(), Values(row));

    /// <summary>One number by its key.</summary>
    public double Value(string key, int table = 0, int column = 0) =>
        Values(Root["tables"]![table]!["rows"]!.AsArray().Single(row => row!["key"]!.GetValue<string>() == key)!)[column]!.Value;

    private static double?[] Values(JsonNode row) => [.. row["values"]!.AsArray().Select(v => v?.GetValue<double>())];
}
