using Heaveline.Cars;
using Heaveline.Drives;
using Heaveline.Drives.Recovery;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Roads;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>
/// A planted drive along Larch Lane, invented: the Fern saloon, four up with luggage, computed by our own kernel and written down by a phone with
/// faults. All of it follows from the seed.
/// </summary>
internal sealed class LarchLane
{
    /// <summary>Between class A and class B at 0.1 cycles/m, m³.</summary>
    public const double Density = 32e-6;

    public const string Load = "four up with luggage";

    // Of the roughness about a hump that is crossed twelve times on one line, the share in power that each pass has for itself, as 'plan' reckons.
    private const double OwnLine = 0.3;

    private static readonly Lazy<LarchLane> Built = new(() => new(Fern("fern-saloon.yaml"), 11, 0.0));
    private static readonly Lazy<LarchLane> Cured = new(() => new(Fern("fern-saloon-cured.yaml"), 12, 0.8));
    private static readonly Lazy<LarchLane> Again = new(() => new(Fern("fern-saloon.yaml"), 13, 0.4));

    private static readonly Lazy<LarchLane> FirstOfDay = new(() => TestDay(Fern("fern-saloon.yaml"), 14));
    private static readonly Lazy<LarchLane> SecondOfDay = new(() => TestDay(Fern("fern-saloon.yaml"), 15));

    private LarchLane(Car car, ulong seed, double lag, bool isTestDay = false)
    {
        Car = car;
        Plan = isTestDay ? LanePlan.Of(seed, 1.0, LaneSite.TestDay, isSpoilt: false) : LanePlan.Of(seed);
        Road = LaneRoad.Of(Plan, Density, RoadClass.C.Mean.Si, seed, isTestDay ? OwnLine : 1.0);
        Driven = DrivenCar.Of(RideModel.Of(car, car.LoadStates.Single(l => l.Name == Load)), Road, Plan.Line);
        Log = PhoneLog.Of(Driven, Pose, Faults(Plan, seed) with { SpeedLag = lag }, LanePath.Of(Plan));
    }

    /// <summary>As the car was built.</summary>
    public static LarchLane Before => Built.Value;

    /// <summary>After the cure; the satellites are 0.8 s late that day.</summary>
    public static LarchLane After => Cured.Value;

    /// <summary>Driven again on another day, nothing changed.</summary>
    public static LarchLane NoChange => Again.Value;

    /// <summary>The test day's first drive, the car as it was built.</summary>
    public static LarchLane Morning => FirstOfDay.Value;

    /// <summary>The test day's second drive, nothing changed.</summary>
    public static LarchLane Evening => SecondOfDay.Value;

    public static PhonePose Pose { get; } = new()
    {
        BehindFrontAxle = 1.45,
        Up = 0.05,
        Turned = 37.0 * Math.PI / 180.0,
        Tipped = 8.0 * Math.PI / 180.0,
    };

    /// <summary>A drive of a test day: twelve passes over each of two humps of 50 mm.</summary>
    /// <param name="car">The car that is driven.</param>
    /// <param name="seed">Of the driver, the road of the passes and the phone.</param>
    public static LarchLane TestDay(Car car, ulong seed) => new(car, seed, 0.4, isTestDay: true);

    public Car Car { get; }

    public LanePlan Plan { get; }

    public Road Road { get; }

    public DrivenCar Driven { get; }

    public Log Log { get; }

    public static Car Fern(string file) => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", file)).Value!;

    /// <summary>The demo's phone.</summary>
    public static PhoneFaults Faults(LanePlan plan, ulong seed) => new()
    {
        Rate = 99.3,
        Jitter = 1e-3,
        ForceGain = 0.985,
        TurnGain = 1.004,
        ForceNoise = 0.04,
        TurnNoise = 0.003,
        TurnOffset = 0.003,
        ForceStep = 0.0049,
        EngineFrequency = 31.0,
        EngineSize = 0.15,
        Gaps = [new(plan.Crossings[5].Time + 7.0, plan.Crossings[5].Time + 7.6)],
        SpeedNoise = 0.1,
        PositionRate = 1.0,
        PositionNoise = 3.0,
        Slip = plan.Slip is { } slip ? new PhoneSlip(slip, 3.0 * Math.PI / 180.0) : null,
        Seed = 1000 * seed,
    };
}
