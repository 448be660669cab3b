using System.Text.Json.Nodes;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>
/// The limits that the road or the drawn cars decide, for machines: what each refuses, and in how many drawn cars each setup keeps it.
/// </summary>
internal static class ChooseLimitFacts
{
    /// <summary>A row a limit.</summary>
    /// <param name="findings">What was found.</param>
    public static JsonArray Of(ChooseFindings findings) =>
    [
        .. findings.Found.Task.Limits.Select((limit, k) => (JsonNode)new JsonObject
        {
            ["limit"] = limit.Says,
            ["share"] = findings.Trial.Draws > 0 ? limit.Share : null,
            ["refused"] = findings.Found.Driven.Count(one => one.Setup != 0L && one.Refusal == DrivenSetup.FirstLimit + k),
            ["held"] = new JsonArray(
            [
                .. findings.List.Select(one => (JsonNode)new JsonObject
                {
                    ["setup"] = one.Letter, ["held"] = one.Entry.Tried.Held[k], ["draws"] = one.Entry.Tried.Asked[k],
                }),
            ]),
        }),
    ];
}
