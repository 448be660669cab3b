using System.Text.Encodings.Web;
using System.Text.Json.Nodes;
using System.Text.Json;

namespace Heaveline.Answers;

/// <summary>Tables and sentences as JSON: the same numbers as the text, not rounded, with their units.</summary>
public static class TablesJson
{
    // Units and names keep their letters: the file is UTF-8.
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text.</summary>
    /// <param name="version">Version of the program.</param>
    /// <param name="command">What was asked: the command's word.</param>
    /// <param name="tables">The tables.</param>
    /// <param name="more">What stands before them.</param>
    public static string Of(string version, string command, IEnumerable<FactTable> tables, JsonObject? more = null)
    {
        var root = new JsonObject { ["heaveline"] = version, ["command"] = command };
        foreach (var (key, value) in more ?? [])
        {
            root[key] = value?.DeepClone();
        }

        root["tables"] = new JsonArray([.. tables.Select(Table)]);
        return root.ToJsonString(Readable);
    }

    /// <summary>Several texts.</summary>
    public static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode)JsonValue.Create(t)!)]);

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
}
