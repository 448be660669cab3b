using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Recovery;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;

namespace Heaveline.Bench;

/// <summary>A car, a change of it, a lane and two drives along it, all by a number: what was planted is known to the last digit.</summary>
internal sealed class PlantedChange
{
    private static readonly (string File, int Load)[] Cars =
        [("fern-saloon", 1), ("sprig-kit-car", 0), ("thimble-city-car", 1), ("fern-saloon", 0), ("drover-van", 0), ("tarn-off-roader", 0)];

    // Front springs, rear springs, front dampers, rear dampers.
    private static readonly double[][] Changes =
        [[0.9, 1.25, 1.0, 1.35], [1.0, 1.0, 1.0, 1.4], [1.0, 1.0, 1.3, 1.3], [0.8, 1.0, 1.0, 1.0], [1.0, 1.2, 1.0, 1.0], [1.0, 1.0, 0.75, 0.75]];

    private static readonly double[] Densities = [8e-6, 16e-6, 32e-6, 64e-6];

    private static readonly double[] Faster = [1.0, 0.85, 1.15];

    private readonly (RideModel Before, RideModel After) driven;
    private readonly ulong seed;

    /// <param name="number">Which, from 0 on.</param>
    public PlantedChange(int number)
    {
        Number = number;
        seed = 500UL + (10UL * (ulong)number);
        var chance = Enumerable.Range(0, 5).Select(i => SplitMix.Uniform(seed, (ulong)i)).ToArray();
        var (file, load) = Cars[number % Cars.Length];
        File = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", file + ".yaml")).Value!;
        Load = File.LoadStates[Math.Min(load, File.LoadStates.Count - 1)];
        Factors = Changes[(int)(chance[0] * Changes.Length)];
        Density = Densities[(int)(chance[1] * Densities.Length)];
        Lane = (int)(chance[2] * Lanes.Length);
        Sites = Lanes[Lane];
        Speeds = Faster[(int)(chance[3] * Faster.Length)];
        Changed = TwinScales.Of(File, [Factors[0], Factors[1], Factors[2], Factors[3], 1.0, 1.0]) with { Name = File.Name + ", changed" };
        IsDrawn = chance[4] < 0.5;
        driven = (RideModel.Of(File, Load), RideModel.Of(Changed, Load));
        if (IsDrawn)
        {
            var models = JointDraw.Of(JointDoubts.Of([CarDoubts.Of(File, Load), CarDoubts.Of(Changed, Load)]), seed, 0).Models;
            driven = (models[0], models[1]);
        }
    }

    /// <summary>Which it is.</summary>
    public int Number { get; }

    /// <summary>The car by its file.</summary>
    public Car File { get; }

    /// <summary>The changed car by its file.</summary>
    public Car Changed { get; }

    /// <summary>How both are loaded.</summary>
    public LoadState Load { get; }

    /// <summary>Front springs, rear springs, front dampers, rear dampers, times so much.</summary>
    public double[] Factors { get; }

    /// <summary>Displacement density of the lane, m³.</summary>
    public double Density { get; }

    /// <summary>Which lane: 0 Larch Lane, 1 with road humps, 2 with sharper ones.</summary>
    public int Lane { get; }

    /// <summary>What lies on it.</summary>
    public IReadOnlyList<LaneSite> Sites { get; }

    /// <summary>How much faster than Larch Lane it is driven.</summary>
    public double Speeds { get; }

    /// <summary>Whether the cars that are driven lie off their files by chance, as the files' doubts allow; else they are the files'.</summary>
    public bool IsDrawn { get; }

    /// <summary>The change as factors.</summary>
    public LinearChange Scaled => new()
    {
        FrontSprings = Factors[0], RearSprings = Factors[1], FrontDampers = Factors[2], RearDampers = Factors[3],
    };

    // Larch Lane; road humps; sharp ones.
    private static LaneSite[][] Lanes { get; } =
    [
        [.. LaneSite.All],
        [
            With(0, new RoundTopHump { Height = new(0.05), Length = new(3.7) }),
            With(1, new FlatTopHump { Height = new(0.05), Plateau = new(2.5), RampUp = new(1.0), RampDown = new(1.0) }),
            With(2, new Versine { Height = new(0.03), Length = new(0.8) }),
            With(3, new Versine { Height = new(-0.05), Length = new(5.0) }),
        ],
        [
            With(0, new RoundTopHump { Height = new(0.075), Length = new(3.7) }),
            With(1, new Versine { Height = new(0.04), Length = new(2.0) }),
            With(2, new Versine { Height = new(0.025), Length = new(1.2) }),
            With(3, new Versine { Height = new(0.05), Length = new(4.0) }),
        ],
    ];

    /// <summary>A drive's log: before the change or after it, each over its own line of the lane.</summary>
    public (LanePlan Plan, Road Road, DrivenCar Driven, Log Log) Drive(bool isAfter)
    {
        var own = seed + (isAfter ? 2UL : 1UL);
        var plan = LanePlan.Of(own, Speeds, Sites);
        var road = LaneRoad.Of(plan, Density, RoadClass.C.Mean.Si, own);
        var car = DrivenCar.Of(isAfter ? driven.After : driven.Before, road, plan.Line);
        return (plan, road, car, PhoneLog.Of(car, LarchLane.Pose, LarchLane.Faults(plan, own), LanePath.Of(plan)));
    }

    /// <summary>A drive as it is read.</summary>
    public ProvedDrive Read(Log log, LanePlan plan)
    {
        var settings = new EventSettings
        {
            Wheelbase = File.Wheelbase.Si, Phone = new PhonePlace { BehindFrontAxle = LarchLane.Pose.BehindFrontAxle },
        };
        var first = ProvedDrive.Of(log, settings, CancellationToken.None);
        var named = LaneNaming.Of(settings, first.Events, plan.Crossings.Select(c => (c.Site, c.Time)));
        return first with { Events = DriveEvents.Of(first.Drive, first.Trust, named) };
    }

    /// <summary>ln of the headline after over before of every crossing, over one road at one speed.</summary>
    /// <param name="drive">The drive before.</param>
    public double[] Truth((LanePlan Plan, Road Road, DrivenCar Driven, Log Log) drive)
    {
        var after = DrivenCar.Of(driven.After, drive.Road, drive.Plan.Line);
        return [.. Headlines(drive.Driven, drive.Plan).Zip(Headlines(after, drive.Plan), (a, b) => Math.Log(b / a))];
    }

    private double[] Headlines(DrivenCar car, LanePlan plan)
    {
        double[] pitch = [.. car.Trace(RideSignal.Pitch)];
        var slow = ZeroPhase.Low(pitch, 1.0 / car.SampleStep, MotionCurves.Slow);
        return [.. plan.Crossings.Select(c =>
        {
            var through = plan.Line.TimeAt(c.Distance + Sites.Single(s => s.Name == c.Site).Obstacle.OverallLength + File.Wheelbase.Si);
            var first = (int)(through / car.SampleStep);
            var count = (int)(1.0 / car.SampleStep);
            return Math.Sqrt(Enumerable.Range(first, count).Average(i => Math.Pow(pitch[i] - slow[i], 2.0)));
        })];
    }

    private static LaneSite With(int place, Obstacle obstacle) => LaneSite.All[place] with { Obstacle = obstacle };
}
