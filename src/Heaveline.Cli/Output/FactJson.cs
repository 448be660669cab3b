using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heaveline.Cli.Output;

/// <summary>Writes tables and sentences as JSON: the same numbers as the text, not rounded, with their units.</summary>
internal static class FactJson
{
    // Units and names keep their letters: the file is UTF-8.
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(string command, IEnumerable<FactTable> tables, JsonObject? more = null)
    {
        var root = new JsonObject { ["heaveline"] = Release.Version, ["command"] = command };
        foreach (var (key, value) in more ?? [])
        {
            root[key] = value?.DeepClone();
        }

        root["tables"] = new JsonArray([.. tables.Select(Table)]);
        return root.ToJsonString(Readable);
    }

    private static JsonNode Table(FactTable table) => new JsonObject
    {
        ["title"] = table.Title,
        ["columns"] = Texts(table.Columns),
        ["rows"] = new JsonArray([.. table.Rows.Select(r => (JsonNode)new JsonObject
        {
            ["key"] = r.Key,
            ["label"] = r.Label,
            ["unit"] = r.Unit,
            ["values"] = new JsonArray([.. r.Values.Select(v => v is { } x ? (JsonNode)JsonValue.Create(x) : null)]),
        })]),
    };

    public static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode)JsonValue.Create(t)!)]);
}
