using System.Text.Json.Nodes;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The road of a site and the twin of a car file, out of a drive.</summary>
internal static class DriveRecovery
{
    /// <summary>Why neither is told by a drive, a sentence; null where they are.</summary>
    public static string? NotTold(DriveEvents? events, CarFromDrive? car) =>
        events is null || car is null ? "Neither a road nor a twin of the car file: this log tells no car."
        : !car.IsBelieved || car.Known is null
            ? "Neither a road nor a twin of the car file: both are told by the car of the drive, which is not believed."
        : null;

    /// <summary>The road of a site.</summary>
    /// <exception cref="RefusedValueException">The site is not one of those that tell the car.</exception>
    public static RecoveredRoad? Road(Drive drive, DriveEvents? events, CarFromDrive? car, string site, CancellationToken stop) =>
        NotTold(events, car) is null ? RecoveredRoad.Of(drive, events!, car!, site, stop) : null;

    /// <summary>The twin.</summary>
    /// <exception cref="RefusedValueException">The car cannot stand as it is scaled.</exception>
    public static Twin? Twin(
        LoadedCar file, EventSettings settings, Drive drive, Trust trust, DriveEvents? events, CarFromDrive? car, CancellationToken stop) =>
        NotTold(events, car) is null
            ? Drives.Recovery.Twin.Of(file.Car, file.Load, car!, DriveWindows.Of(drive, events!, trust), settings.Phone?.Left ?? 0.0, stop)
            : null;

    /// <summary>A road for machines.</summary>
    public static JsonObject? Json(RecoveredRoad? road) => road is null ? null : new JsonObject
    {
        ["site"] = road.Site,
        ["event"] = road.Event,
        ["speed"] = road.Speed,
        ["passes"] = road.Passes,
        ["waves"] = new JsonArray(road.ShortestWave, road.LongestWave),
        ["hump"] = new JsonArray(road.Hump.From, road.Hump.To),
        ["distance"] = Array([.. road.Distance]),
        ["height"] = Array([.. road.Height]),
        ["half-width"] = Array([.. road.HalfWidth]),
    };

    /// <summary>A twin for machines.</summary>
    public static JsonObject? Json(Twin? twin) => twin is null ? null : new JsonObject
    {
        ["believed"] = twin.IsBelieved,
        ["refusal"] = twin.Refusal,
        ["misfit"] = double.IsFinite(twin.Misfit) ? twin.Misfit : null,
        ["factors"] = new JsonObject([.. twin.Factors.Select(f => KeyValuePair.Create(DriveTwinWords.Key(f.Scale), (JsonNode?)new JsonObject
        {
            ["value"] = f.Factor.Value, ["low"] = f.Factor.Low, ["high"] = f.Factor.High, ["learned"] = f.Learned, ["said"] = f.IsSaid,
            ["reason"] = f.Reason,
        }))]),
    };

    private static JsonArray Array(double[] values) => [.. values.Select(v => (JsonNode?)JsonValue.Create(v))];
}
