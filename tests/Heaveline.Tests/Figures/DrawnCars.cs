using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Tests.Figures;

/// <summary>Invented vehicles and passes to draw. Their numbers are plausible and mean nothing.</summary>
internal static class DrawnCars
{
    private static readonly ForceTable Bump = new([0.05, 0.15, 0.4, 1.0], [70.0, 155.0, 300.0, 560.0]);
    private static readonly ForceTable Rebound = new([0.05, 0.15, 0.4, 1.0], [150.0, 330.0, 640.0, 1150.0]);

    internal static Car Saloon => new()
    {
        Name = "Hazel saloon",
        Wheelbase = new(2.66),
        Weighing = Weighing.PerAxle(new(742.0), new(568.0)),
        Body = new() { CentreHeight = new(0.56), PitchAxisHeight = new(0.30), RollAxisHeight = new(0.10) },
        Front = AxleOf(1.50, 78.0, 21000.0, 0.062, 0.085, 14500.0),
        Rear = AxleOf(1.48, 72.0, 22500.0, 0.078, 0.090, 6500.0),
        Seats =
        [
            new() { Name = "driver", BehindFrontAxle = new(1.36), LeftOfMiddle = new(0.36), Height = new(0.52) },
            new() { Name = "rear passenger", BehindFrontAxle = new(2.22), LeftOfMiddle = new(0.34), Height = new(0.55) },
        ],
        Headlamp = new() { Height = new(0.64), AheadOfFrontAxle = new(0.62), Drop = new(0.012) },
        LoadStates = [Driver, FourUp],
    };

    internal static LoadState Driver => new() { Name = "driver alone", Loads = [Person("driver", 1.36, 0.36)] };

    internal static LoadState FourUp => new()
    {
        Name = "four and luggage",
        Loads =
        [
            Person("driver", 1.36, 0.36), Person("front passenger", 1.36, -0.36), Person("rear left", 2.22, 0.34), Person("rear right", 2.22, -0.34),
            new() { Name = "luggage", Mass = new(60.0), BehindFrontAxle = new(3.05), Height = new(0.72) },
        ],
    };

    /// <summary>The saloon with springs softer in front.</summary>
    internal static Car SofterFront =>
        Saloon with { Front = Saloon.Front with { Spring = new() { Law = new LinearSpring { Rate = new(16500.0) } } } };

    /// <summary>The saloon with firmer dampers behind.</summary>
    internal static Car FirmerRear => Saloon with
    {
        Rear = Saloon.Rear with { Damper = new() { Law = new RatioDamper { Ratio = new(0.40), ReboundPerBump = new(2.0) } } },
    };

    /// <summary>The saloon with a common spring on each side.</summary>
    internal static Car Linked => Saloon with
    {
        Name = "Bracken estate",
        Front = Saloon.Front with { Spring = new() { Law = new LinearSpring { Rate = new(11000.0) } } },
        Rear = Saloon.Rear with { Spring = new() { Law = new LinearSpring { Rate = new(9500.0) } } },
        Interconnection = new ElasticLink { Rate = new(11500.0), RearRatio = new(0.9), Carried = new(900.0) },
    };

    internal static Car TwoWheeler => new()
    {
        Name = "Teasel two-wheeler",
        Kind = VehicleKind.TwoWheeler,
        Wheelbase = new(1.44),
        Weighing = Weighing.PerAxle(new(131.0), new(142.0)),
        Body = new() { CentreHeight = new(0.62), PitchAxisHeight = new(0.40), PitchInertia = new(38.0) },
        Front = AxleOf(0.0, 17.0, 17500.0, 0.075, 0.060, 0.0) with { Tyre = new() { Rate = new(165000.0), Damping = new(110.0) }, Damper = Fork },
        Rear = AxleOf(0.0, 21.0, 23500.0, 0.070, 0.055, 0.0) with { Tyre = new() { Rate = new(180000.0), Damping = new(110.0) }, Damper = Fork },
        Seats = [new() { Name = "rider", BehindFrontAxle = new(0.86), Height = new(0.82), HeadAboveSeat = new(0.75) }],
        Headlamp = new() { Height = new(0.92), AheadOfFrontAxle = new(-0.12), Drop = new(0.012) },
        LoadStates =
        [
            new() { Name = "rider", Loads = [new() { Name = "rider", Mass = new(80.0), BehindFrontAxle = new(0.86), Height = new(1.0) }] },
            new()
            {
                Name = "two and cases",
                Loads =
                [
                    new() { Name = "rider", Mass = new(80.0), BehindFrontAxle = new(0.86), Height = new(1.0) },
                    new() { Name = "passenger", Mass = new(65.0), BehindFrontAxle = new(1.16), Height = new(1.05) },
                    new() { Name = "cases", Mass = new(20.0), BehindFrontAxle = new(1.45), Height = new(0.75) },
                ],
            },
        ],
    };

    internal static Road Hump => Road.From(new RoundTopHump { Height = new(0.060), Length = new(0.90) });

    internal static Road OneSided => Road.From(new HalfSine { Height = new(0.050), Length = new(0.60) }, Tracks.Left);

    internal static Road Waves => Road.From(new SineRoad { Amplitude = new(0.020), Wavelength = new(9.0), Waves = 4.0 });

    internal static (Pass Pass, PassMeasures Measures) Over(Road road, Car car, double kilometresPerHour, LoadState? load = null)
    {
        var pass = Pass.Of(RideModel.Of(car, load), road, kilometresPerHour / 3.6);
        return (pass, PassMeasures.Of(pass));
    }

    /// <summary>The car empty and under each of its load states.</summary>
    internal static IReadOnlyList<RideModel> Loaded(Car car) => [RideModel.Of(car), .. car.LoadStates.Select(load => RideModel.Of(car, load))];

    private static Damper Fork => new()
    {
        Law = new TableDamper(new([0.05, 0.15, 0.4, 1.0], [55.0, 140.0, 310.0, 640.0]), new([0.05, 0.15, 0.4, 1.0], [132.0, 336.0, 744.0, 1536.0])),
    };

    private static Load Person(string name, double behind, double left) =>
        new() { Name = name, Mass = new(75.0), BehindFrontAxle = new(behind), LeftOfMiddle = new(left), Height = new(0.75) };

    private static Axle AxleOf(double track, double unsprung, double rate, double bump, double rebound, double bar) => new()
    {
        Track = new(track),
        UnsprungMass = new(unsprung),
        Spring = new() { Law = new LinearSpring { Rate = new(rate) } },
        Damper = new() { Law = new TableDamper(Bump, Rebound) },
        BumpStop = new() { Clearance = new(bump), Rate = new(60000.0), Exponent = new(2.0) },
        ReboundStop = new() { Clearance = new(rebound), Rate = new(125000.0) },
        AntiRollBar = new(bar),
        Tyre = new() { Rate = new(205000.0), Damping = new(140.0), ContactLength = new(0.12) },
    };
}
