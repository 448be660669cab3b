using Heaveline.Passes.Steps;

namespace Heaveline.Recording;

/// <summary>Numbers of front and rear axle, noted one by one, as pairs.</summary>
internal readonly unsafe struct RecordPlaces : IPlaces<RecordLane, RecordLane>
{
    public static void Put(RecordLane* to, int place, RecordLane value) =>
        *to = place == 0 ? RecordLane.Joined(value, RecordLane.Second(*to)) : RecordLane.Joined(RecordLane.First(*to), value);
}
