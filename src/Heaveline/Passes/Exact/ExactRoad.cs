using Heaveline.Roads;

namespace Heaveline.Passes.Exact;

/// <summary>What each wheel rolls over, already averaged over its tyre's contact length.</summary>
/// <param name="FrontLeft">Height under the front left wheel.</param>
/// <param name="FrontRight">Height under the front right wheel.</param>
/// <param name="RearLeft">Height under the rear left wheel, over the same distance as the front.</param>
/// <param name="RearRight">Height under the rear right wheel.</param>
internal sealed record ExactRoad(Profile FrontLeft, Profile FrontRight, Profile RearLeft, Profile RearRight)
{
    /// <summary>The four profiles, front first, left first.</summary>
    public IReadOnlyList<Profile> Corners => [FrontLeft, FrontRight, RearLeft, RearRight];

    /// <summary>A road as the tyres of a car pass it on.</summary>
    public static ExactRoad From(RoadUnderWheels road) => new(road[0], road[1], road[2], road[3]);
}
