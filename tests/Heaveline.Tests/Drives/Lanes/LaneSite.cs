using Heaveline.Roads;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>An obstacle of the lane, invented, and the speeds at which its crossings are driven, one a lap, km/h.</summary>
/// <remarks>
/// Low ones: over humps of 75 mm the saloon, four up with luggage, is on its bump stops at every speed, and no linear car moves like that.
/// </remarks>
internal sealed record LaneSite(string Name, Obstacle Obstacle, double[] Speeds)
{
    /// <summary>Under which wheels it lies.</summary>
    public Tracks Tracks { get; init; }

    public static IReadOnlyList<LaneSite> All { get; } =
    [
        new("Chapel hump", new RoundTopHump { Height = new(0.03), Length = new(3.7) }, [18, 24, 30, 26, 20, 32]),
        new(
            "Bakery table",
            new FlatTopHump { Height = new(0.03), Plateau = new(2.5), RampUp = new(1.0), RampDown = new(1.0) },
            [16, 22, 28, 19, 47, 25]),
        new("Mill joint", new Versine { Height = new(0.02), Length = new(0.8) }, [45, 45, 45, 45, 45, 45]),
        new("Orchard dip", new Versine { Height = new(-0.03), Length = new(5.0) }, [20, 26, 32, 24, 29, 22]),
    ];

    /// <summary>The lane of a test day: two humps of 50 mm, twelve passes over each, none faster than 30 km/h.</summary>
    public static IReadOnlyList<LaneSite> TestDay { get; } =
    [
        new("Chapel hump", new RoundTopHump { Height = new(0.05), Length = new(3.7) }, [18, 22, 26, 28, 20, 24, 28, 25, 19, 23, 27, 21]),
        new(
            "Bakery table",
            new FlatTopHump { Height = new(0.05), Plateau = new(2.5), RampUp = new(1.0), RampDown = new(1.0) },
            [18, 24, 28, 20, 26, 22, 19, 25, 27, 23, 21, 28]),
    ];
}
