using System.Text.Json.Nodes;

namespace Heaveline.Cli.Output;

/// <summary>Tables and sentences as JSON under this program's version.</summary>
internal static class FactJson
{
    public static string Of(string command, IEnumerable<FactTable> tables, JsonObject? more = null) =>
        TablesJson.Of(Release.Version, command, tables, more);
}
