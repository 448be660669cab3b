using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives.Comparison;

namespace Heaveline.Studies;

/// <summary>A comparison for machines: shares as fractions, speeds in m/s, numbers in SI units.</summary>
internal static class ProveJson
{
    /// <summary>One number's comparison.</summary>
    public static JsonObject Of(ProvedNumber proved)
    {
        var result = proved.Result;
        return new JsonObject
        {
            ["verdict"] = ProveWords.Word(result.Verdict),
            ["change"] = Effect(result.Pooled),
            ["before"] = result.Before,
            ["after"] = result.After,
            ["scatter"] = Number(result.Scatter),
            ["power"] = Number(result.Power),
            ["needed"] = result.PassesNeeded,
            ["more"] = result.MorePasses,
            ["apartProbability"] = result.ApartProbability,
            ["sites"] = new JsonArray([.. result.Sites.Select(s => (JsonNode)new JsonObject
            {
                ["name"] = s.Site,
                ["verdict"] = ProveWords.Word(s.Verdict),
                ["change"] = Effect(s.Effect),
                ["before"] = s.Before,
                ["after"] = s.After,
                ["alike"] = s.Speeds.IsAlike,
            })]),
            ["passes"] = new JsonArray([.. result.Counted.Select(p => Pass(p, true)), .. result.LeftOut.Select(p => Pass(p, false))]),
        };
    }

    /// <summary>What changed in the car.</summary>
    public static JsonObject Of(CarChange? change, IEnumerable<Sentence> sentences) => new()
    {
        ["sentences"] = TablesJson.Texts(sentences.Select(s => s.Text)),
        ["numbers"] = new JsonObject([.. (change?.Numbers ?? []).Select(n => KeyValuePair.Create(
            DriveCarTable.Of(n.Number).Key,
            (JsonNode?)new JsonObject { ["before"] = n.Before, ["after"] = n.After, ["change"] = Effect(n.Effect), ["told"] = n.IsTold }))]),
    };

    private static JsonNode Pass(ComparedPass pass, bool counts) => new JsonObject
    {
        ["site"] = pass.Site,
        ["after"] = pass.IsAfter,
        ["event"] = pass.Number,
        ["speed"] = pass.Speed,
        ["value"] = pass.Value,
        ["counts"] = counts,
    };

    private static JsonObject? Effect(EffectInterval? effect) => effect is null
        ? null
        : new JsonObject
        {
            ["value"] = effect.Value,
            ["low"] = effect.Low,
            ["high"] = effect.High,
            ["probability"] = effect.Probability,
            ["freedom"] = effect.Freedom,
        };

    private static JsonValue? Number(double value) => double.IsFinite(value) ? JsonValue.Create(value) : null;
}
