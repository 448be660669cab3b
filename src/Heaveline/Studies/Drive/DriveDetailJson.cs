using System.Text.Json.Nodes;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using static Heaveline.Studies.DriveCarJson;

namespace Heaveline.Studies;

/// <summary>What else a told car tells, for machines, in SI units.</summary>
internal static class DriveDetailJson
{
    /// <summary>The gentler and the harder half.</summary>
    public static JsonObject? Of(MotionHalves? halves) => halves is null ? null : new JsonObject
    {
        ["whyNot"] = halves.WhyNot,
        ["gentle"] = Half(halves.Gentle),
        ["hard"] = Half(halves.Hard),
        ["hardOverGentle"] = new JsonObject([.. halves.Differences.Select(d => KeyValuePair.Create(Word(d.Number), (JsonNode?)new JsonObject
        {
            ["value"] = d.Ratio, ["low"] = d.Low, ["high"] = d.High, ["beyondChance"] = d.IsBeyondChance,
        }))]),
    };

    /// <summary>The speeds that suit.</summary>
    public static JsonObject? Of(DriveSpeeds? speeds) => speeds is null ? null : new JsonObject
    {
        ["ratio"] = speeds.Ratio,
        ["inStep"] = Speed(speeds.InStep),
        ["sites"] = new JsonArray([.. speeds.Sites.Select(s => (JsonNode)new JsonObject
        {
            ["site"] = s.Site,
            ["from"] = s.Range.Slowest,
            ["to"] = s.Range.Fastest,
            ["most"] = s.IsMostWithin ? Speed(s.Most) : null,
            ["least"] = s.IsLeastWithin ? Speed(s.Least) : null,
            ["suited"] = new JsonArray([.. s.Suited.Select(f => (JsonNode?)Speed(f))]),
            ["wantsLargerRatio"] = s.WantsLarger,
            ["speed"] = Numbers(s.Speeds),
            ["pitch"] = Numbers(s.Pitch),
        })]),
    };

    /// <summary>The roughness along the drive.</summary>
    public static JsonObject? Of(DriveRoughness? roughness) => roughness is null ? null : new JsonObject
    {
        ["whyNot"] = roughness.WhyNot,
        ["stretches"] = new JsonArray([.. roughness.Stretches.Select(s => (JsonNode)new JsonObject
        {
            ["from"] = s.From, ["to"] = s.To, ["at"] = s.At, ["read"] = s.Read, ["speed"] = s.Speed, ["density"] = s.Density, ["low"] = s.Low,
            ["high"] = s.High, ["class"] = s.Class.Letter.ToString(), ["told"] = s.IsTold, ["waves"] = new JsonArray(s.ShortestWave, s.LongestWave),
        })]),
    };

    private static JsonObject? Half(MotionHalf? half) => half is null ? null : new JsonObject
    {
        ["windows"] = half.Windows,
        ["damperSpeed"] = half.TravelSpeed,
        ["pitch"] = half.PitchMotion,
        ["numbers"] = new JsonObject([.. half.Estimates.Select(e => KeyValuePair.Create(Word(e.Number), (JsonNode?)new JsonObject
        {
            ["value"] = e.Value, ["low"] = e.Low, ["high"] = e.High, ["said"] = e.IsSaid,
        }))]),
    };

    private static JsonObject? Speed(FoundSpeed? found) => found is null ? null : new JsonObject
    {
        ["speed"] = found.Speed,
        ["low"] = double.IsFinite(found.Low) ? found.Low : null,
        ["high"] = double.IsFinite(found.High) ? found.High : null,
    };
}
