using System.Text.Json.Nodes;
using Heaveline.Drives.Events;

namespace Heaveline.Studies;

/// <summary>The bumps of a drive for machines, in SI units.</summary>
internal static class EventsJson
{
    /// <summary>A member a bump; null where none were looked for.</summary>
    public static JsonArray? Of(DriveEvents? events) => events is null ? null : [.. events.Events.Select(e => (JsonNode)new JsonObject
    {
        ["number"] = e.Number,
        ["site"] = e.Site,
        ["kind"] = EventWords.Kind(e.Kind),
        ["counts"] = e.IsKept,
        ["byHand"] = e.ByHand,
        ["reason"] = e.Reason,
        ["seen"] = e.Seen,
        ["score"] = e.Score,
        ["explained"] = e.Explained,
        ["onset"] = e.Onset,
        ["onsetHalfWidth"] = e.OnsetHalfWidth,
        ["speed"] = e.Speed,
        ["speedHalfWidth"] = e.SpeedHalfWidth,
        ["speedChange"] = e.SpeedChange,
        ["distance"] = Finite(e.Distance),
        ["length"] = e.Length,
        ["lengthHalfWidth"] = e.LengthHalfWidth,
        ["hitUntil"] = e.HitUntil,
        ["settlingUntil"] = e.SettlingUntil,
        ["numbers"] = new JsonObject([.. e.Numbers.All.Select(n => KeyValuePair.Create(n.Measure.Key, (JsonNode?)new JsonObject
        {
            ["value"] = Finite(n.Value),
            ["halfWidth"] = Finite(double.IsFinite(n.Value) ? n.HalfWidth : double.NaN),
            ["unit"] = n.Measure.Unit.Si,
        }))]),
    })];

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
