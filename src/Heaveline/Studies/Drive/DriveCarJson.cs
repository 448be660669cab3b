using System.Text.Json.Nodes;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The car that a drive tells for machines, in SI units.</summary>
internal static class DriveCarJson
{
    /// <summary>The car; null where none was looked for.</summary>
    /// <param name="answer">What the drive says.</param>
    public static JsonObject? Of(DriveAnswer answer) =>
        answer.Identified is { } car ? Of(car, answer.Beside, answer.Events is { } events ? DriveWindows.LeftOut(answer.Drive, events) : []) : null;

    private static JsonObject Of(CarFromDrive car, CarBeside? beside, IReadOnlyList<(DriveEvent Bump, string Reason)> leftOut) => new()
    {
        ["believed"] = car.IsBelieved,
        ["refusals"] = new JsonArray([.. car.Refusals.Select(r => (JsonNode)new JsonObject
        {
            ["rule"] = Word(r.Kind.ToString()), ["says"] = r.Says, ["wouldTell"] = r.WouldTell,
        })]),
        ["numbers"] = new JsonObject([.. car.Estimates.Select(e => KeyValuePair.Create(Word(e.Number), (JsonNode?)new JsonObject
        {
            ["value"] = e.Value,
            ["low"] = car.IsBelieved ? e.Low : null,
            ["high"] = car.IsBelieved ? e.High : null,
            ["said"] = e.IsSaid,
            ["reason"] = e.Reason,
            ["learned"] = e.Learned,
            ["thoughtLow"] = e.KnownLow,
            ["thoughtHigh"] = e.KnownHigh,
            ["carFile"] = beside?.Of(e.Number),
        }))]),
        ["correlations"] = new JsonArray([.. car.Correlations.Select(row => (JsonNode)new JsonArray([.. row.Select(c => (JsonNode)c)]))]),
        ["damperSpeed"] = car.TravelSpeed,
        ["pitch"] = car.PitchMotion,
        ["roughness"] = car.Roughness,
        ["gyroGain"] = car.GyroGain,
        ["residuals"] = new JsonArray([.. car.Residuals.Select(r => (JsonNode)new JsonObject
        {
            ["from"] = r.From, ["to"] = r.To, ["vertical"] = r.Vertical, ["pitchRate"] = r.Pitch,
        })]),
        ["starts"] = new JsonArray([.. car.Starts.Select(s => (JsonNode)new JsonObject
        {
            ["frontFrequency"] = s.FrontFrequency, ["rearFrequency"] = s.RearFrequency, ["frontDamping"] = s.FrontDamping,
            ["rearDamping"] = s.RearDamping, ["pitchIndex"] = s.PitchIndex, ["behind"] = s.Behind,
        })]),
        ["windows"] = new JsonArray([.. car.Windows.Select(w => (JsonNode)new JsonObject
        {
            ["event"] = w.Event, ["site"] = w.Site, ["speed"] = w.Speed, ["speedHalfWidth"] = w.SpeedHalfWidth,
        })]),
        ["leftOut"] = new JsonArray([.. leftOut.Select(l => (JsonNode)new JsonObject { ["event"] = l.Bump.Number, ["reason"] = l.Reason })]),
        ["humps"] = new JsonArray([.. car.Humps.Select(h => (JsonNode)new JsonObject
        {
            ["site"] = h.Site, ["distance"] = Numbers(h.Distance), ["height"] = Numbers(h.Height), ["halfWidth"] = Numbers(h.HalfWidth),
        })]),
    };

    /// <summary>Numbers in a row.</summary>
    internal static JsonArray Numbers(IEnumerable<double> values) => [.. values.Select(v => (JsonNode)v)];

    /// <summary>The word of a number of the car.</summary>
    internal static string Word(CarNumber number) => Word(number.ToString());

    private static string Word(string name) => FirstLetter.Lowered(name);
}
