using System.Text.Json.Nodes;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Passes;

/// <summary>How a measure that a page works out itself is written there: as the program prints it, in the reader's units.</summary>
internal static class LiveNumber
{
    /// <summary>What stands in place of a number that there is none of.</summary>
    public const string None = "not recorded";

    /// <summary>The measure for the page's script.</summary>
    public static JsonNode Of(Measure measure, ReaderUnits units)
    {
        var turned = units.For(measure.Unit.Symbol);
        return new JsonObject
        {
            ["key"] = measure.Key,
            ["factor"] = measure.Unit.Factor,
            ["digits"] = measure.Digits,
            ["suffix"] = turned is null ? measure.Unit.Suffix.Replace(' ', '\u00a0') : "\u00a0" + turned.Symbol,
            // What is printed in metric units is turned, as everywhere.
            ["turn"] = turned?.Factor,
            ["turned"] = turned?.Decimals(measure.Digits),
        };
    }
}
