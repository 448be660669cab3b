using CsCheck;
using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tests;

/// <summary>
/// Random valid vehicles for property tests: independent wheels and solid axles, bars, linear, table and gas springs, varying motion ratios, table
/// and ratio dampers through ratios and at places of their own, straight, curved and table stops, friction, elastic links and fluid lines, with
/// inertance and without, one-sided weights and loads. Springs suit the weight
/// they carry (0.9 to 2 Hz), so that every car can stand under every load drawn here.
/// </summary>
internal static class AnyCar
{
    private const double Gravity = 9.80665;

    /// <summary>Cars of every kind, two-wheelers included.</summary>
    public static Gen<Car> Any { get; } = Gen.OneOf(Draw(linear: false), Draw(linear: false), Draw(linear: false), TwoWheelers());

    /// <summary>Cars with four wheels of every kind.</summary>
    public static Gen<Car> FourWheeled { get; } = Draw(linear: false);

    /// <summary>
    /// Cars whose every law is a straight line: linear springs, constant ratios, no stops, no gas. Interconnections of constant rate included.
    /// </summary>
    public static Gen<Car> Linear { get; } = Draw(linear: true);

    /// <summary>One to three loads inside the car, up to 110 kg each and up to half a metre off the middle.</summary>
    public static Gen<LoadState> Loads { get; } = Gen.Select(
        Gen.Double[5.0, 110.0], Gen.Double[0.6, 2.2], Gen.Double[-0.5, 0.5], Gen.Double[0.3, 1.1])
        .Array[1, 3]
        .Select(loads => new LoadState
        {
            Name = "loaded",
            Loads = [.. loads.Select((l, i) => new Load
            {
                Name = $"load {i}",
                Mass = new(l.Item1),
                BehindFrontAxle = new(l.Item2),
                LeftOfMiddle = new(l.Item3),
                Height = new(l.Item4),
            })],
        });

    /// <summary>The same car with left and right exchanged.</summary>
    public static Car Mirrored(Car car) => car with
    {
        Weighing = new Weighing
        {
            FrontLeft = car.Weighing.FrontRight, FrontRight = car.Weighing.FrontLeft, RearLeft = car.Weighing.RearRight,
            RearRight = car.Weighing.RearLeft,
        },
    };

    /// <summary>The same loads on the other side.</summary>
    public static LoadState Mirrored(LoadState state) =>
        state with { Loads = [.. state.Loads.Select(l => l with { LeftOfMiddle = new(-l.LeftOfMiddle.Si) })] };

    private static Gen<Car> Draw(bool linear) =>
        Gen.Select(Gen.Double[2.2, 3.2], Gen.Double[380.0, 900.0], Gen.Double[0.8, 1.2], Gen.Double[-0.04, 0.04], Gen.Bool, Gen.Int[0, 4])
            .SelectMany((wheelbase, front, share, lean, axes, link) =>
            {
                var rear = front * share;
                return Gen.Select(
                    AxleOf(front, linear), AxleOf(rear, linear), Link(link, front, rear, linear), Gen.Double[0.8, 1.2], (f, r, x, index) => new Car
                    {
                        Name = "drawn",
                        Wheelbase = new(wheelbase),
                        Weighing = new Weighing
                        {
                            FrontLeft = new(0.5 * front * (1.0 + lean)), FrontRight = new(0.5 * front * (1.0 - lean)),
                            RearLeft = new(0.5 * rear * (1.0 + lean)), RearRight = new(0.5 * rear * (1.0 - lean)),
                        },
                        Body = new Body
                        {
                            CentreHeight = new(0.55),
                            DynamicIndex = new(index),
                            PitchAxisHeight = axes ? new Amount<Length>(0.3) : null,
                            RollAxisHeight = axes ? new Amount<Length>(0.1) : null,
                        },
                        Front = f,
                        Rear = r,
                        Interconnection = x,
                    });
            });

    private static Gen<Car> TwoWheelers() =>
        Gen.Select(Gen.Double[1.2, 1.7], Gen.Double[80.0, 140.0], Gen.Double[0.8, 1.4]).SelectMany((wheelbase, front, share) =>
            Gen.Select(AxleOf(2.0 * front, linear: false), AxleOf(2.0 * front * share, linear: false), (f, r) => new Car
            {
                Name = "drawn two-wheeler",
                Kind = VehicleKind.TwoWheeler,
                Wheelbase = new(wheelbase),
                Weighing = Weighing.PerAxle(new(front), new(front * share)),
                Body = new Body { CentreHeight = new(0.7) },
                Front = OneWheel(f),
                Rear = OneWheel(r),
            }));

    private static Axle OneWheel(Axle axle) => axle with
    {
        Track = new(0.0),
        UnsprungMass = new(0.5 * axle.UnsprungMass.Si),
        Suspension = SuspensionKind.Independent,
        SpringBase = null,
        DamperBase = null,
        StopBase = null,
        RollInertia = null,
        AntiRollBar = new(0.0),
    };

    private static Gen<Axle> AxleOf(double weight, bool linear) =>
        Gen.Select(Gen.Double[0.06, 0.14], Gen.Bool, Gen.Double[1.3, 1.7], Gen.Double[0.6, 1.0], Gen.Double[0.0, 30000.0])
            .SelectMany((unsprung, solid, track, spread, bar) =>
            {
                var mass = unsprung * weight;
                var carried = 0.5 * (weight - mass);
                return Gen.Select(
                    SpringOf(carried, linear),
                    DamperOf(carried, linear),
                    StopOf(linear),
                    StopOf(linear),
                    Gen.Double[120e3, 260e3],
                    Gen.Bool,
                    BasesOf(track),
                    (spring, damper, bump, rebound, tyre, rubs, bases) => new Axle
                    {
                        Track = new(track),
                        UnsprungMass = new(mass),
                        Suspension = solid ? SuspensionKind.SolidAxle : SuspensionKind.Independent,
                        RollInertia = solid ? new Amount<Inertia>(mass * 0.2 * track * track) : null,
                        SpringBase = solid ? new Amount<Length>(spread * track) : null,
                        DamperBase = solid ? bases.Damper : null,
                        StopBase = solid ? bases.Stop : null,
                        Spring = spring,
                        Damper = damper,
                        BumpStop = bump,
                        ReboundStop = rebound,
                        Friction = rubs && !linear ? new Friction { HalfWidth = new(60.0) } : Friction.None,
                        AntiRollBar = new(bar),
                        Tyre = new Tyre { Rate = new(tyre), Damping = new(150.0) },
                    });
            });

    // Dampers and stops at the springs, or at places of their own.
    private static Gen<(Amount<Length>? Damper, Amount<Length>? Stop)> BasesOf(double track)
    {
        var place = Gen.Select(Gen.Bool, Gen.Double[0.5, 1.0], (own, share) => own ? new Amount<Length>(share * track) : (Amount<Length>?)null);
        return Gen.Select(place, place);
    }

    private static Gen<Spring> SpringOf(double mass, bool linear) =>
        Gen.Select(Gen.Double[0.9, 2.0], Gen.Double[0.6, 1.1], Gen.Double[-0.4, 0.8], Gen.Int[0, 5], (hertz, ratio, change, kind) =>
        {
            var atWheel = mass * Math.Pow(2.0 * Math.PI * hertz, 2);
            var rate = atWheel / (ratio * ratio);
            var load = mass * Gravity / ratio;
            SpringLaw law = linear ? new LinearSpring { Rate = new(rate) } : kind switch
            {
                0 => new GasSpring { Area = new(load / 5e5), Volume = new(1.3 * load * load / (5e5 * rate)) },
                1 => new TableSpring(new ForceTable(
                    [-0.2, 0.0, 0.03, 0.2], [load - (0.2 * rate), load, load + (0.03 * rate), load + (0.03 * rate) + (0.17 * 1.5 * rate)])),
                _ => new LinearSpring { Rate = new(rate) },
            };
            return new Spring
            {
                Law = law,
                MotionRatio = linear || kind > 3 ? MotionRatio.Constant(ratio) : MotionRatio.Constant(ratio) with { PerTravel = new(change * ratio) },
            };
        });

    private static Gen<Damper> DamperOf(double mass, bool linear) =>
        Gen.Select(
            Gen.Double[0.15, 0.45],
            Gen.Double[1.0, 3.0],
            Gen.Bool,
            Gen.Double[0.0, 150.0],
            Gen.Double[0.6, 1.1],
            Gen.Double[-0.4, 0.8],
            Gen.Int[0, 3],
            (zeta, rebound, table, gas, ratio, change, place) =>
            {
                var constant = MotionRatio.Constant(ratio);
                var motion = place switch
                {
                    < 2 => MotionRatio.One,
                    3 when !linear => constant with { PerTravel = new(change * ratio) },
                    _ => constant,
                };
                // As a table: bump bends down and rebound bends down, as most do; at the wheel slopes near 2ζ√(k·m) at 1.3 Hz.
                var slope = 2.0 * zeta * mass * 2.0 * Math.PI * 1.3 / Math.Pow(motion.AtReference.Si, 2);
                DamperLaw law = table && !linear
                    ? new TableDamper(
                        new ForceTable([0.1, 0.5], [0.07 * slope, 0.25 * slope]), new ForceTable([0.1, 0.5], [0.13 * slope, 0.45 * slope]))
                    : new RatioDamper { Ratio = new(zeta), ReboundPerBump = new(linear ? 1.0 : rebound) };
                return new Damper { Law = law, MotionRatio = motion, GasForce = new(linear ? 0.0 : gas) };
            });

    private static Gen<Stop?> StopOf(bool linear) => linear
        ? Gen.Const((Stop?)null)
        : Gen.Select(
            Gen.Double[0.02, 0.09], Gen.Double[50e3, 300e3], Gen.Double[1.2, 3.0], Gen.Int[0, 3], (clearance, rate, exponent, kind) => kind switch
            {
                0 => null,
                1 => new Stop { Clearance = new(clearance), Rate = new Amount<Stiffness>(rate) },
                2 => new Stop { Clearance = new(clearance), Rate = new Amount<Stiffness>(rate), Exponent = new(exponent) },
                _ => (Stop?)new Stop { Clearance = new(clearance), Table = new ForceTable([0.0, 0.01, 0.03], [0.0, 0.01 * rate, 0.06 * rate]) },
            });

    private static Gen<Interconnection?> Link(int kind, double front, double rear, bool linear) =>
        Gen.Select(Gen.Double[2e3, 9e3], Gen.Double[0.5, 1.0], Gen.Bool, Gen.Double[0.1, 0.3], Gen.Int[0, 3], (rate, ratio, opposed, share, line) =>
        {
            if (kind == 0)
            {
                return new ElasticLink
                {
                    Rate = new(rate),
                    Damping = new(300.0 * (line % 3)),
                    FrontRatio = new(1.0),
                    RearRatio = new(opposed ? -ratio : ratio),
                    Carried = new(opposed ? 0.0 : 200.0),
                };
            }

            if (kind != 1)
            {
                return null;
            }

            // Displacers that carry a share of the lighter axle's weight at 10 bar, and give about as much rate as load over 0.25 m.
            var area = share * 0.5 * Math.Min(front, rear) * Gravity / 1e6;
            var compliance = area * area / (share * 0.5 * Math.Min(front, rear) * Gravity / 0.25);
            var unit = linear
                ? new Accumulator { Compliance = new Amount<Compliance>(compliance) }
                : new Accumulator { GasVolume = new Amount<Volume>(1.38 * 1.1e6 * compliance) };
            return (Interconnection?)new FluidLink
            {
                FrontArea = new(area), RearArea = new(area * ratio), Front = unit, Rear = unit, BasePressure = new(1e6),
                // The last is a pipe of resistance alone.
                Line = line == 3
                    ? new FluidLine { State = LineState.Pipe, Resistance = new(2e8) }
                    : new FluidLine { State = (LineState)line, Inertance = new(5e6), Resistance = new(2e8) },
            };
        });
}
