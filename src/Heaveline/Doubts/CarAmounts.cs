using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>
/// Walks through every amount of a car and its load, always in the same order, and builds the car that the visitor's answers make. A table is visited
/// by its factor, which moves all its forces together. An inertia or wheel radius that is estimated is visited by its estimate.
/// </summary>
internal sealed class CarAmounts(IAmountVisitor visitor)
{
    public (Car Car, LoadState Load) Through(Car car, LoadState load)
    {
        var changed = car with
        {
            Wheelbase = visitor.Visit("wheelbase", car.Wheelbase),
            Weighing = Through(car.Weighing),
            Body = Through(car.Body),
            Front = Through("front", car.Front),
            Rear = Through("rear", car.Rear),
            Interconnection = car.Interconnection switch
            {
                ElasticLink link => Through(link),
                FluidLink link => Through(link),
                var other => other,
            },
            Seats = [.. car.Seats.Select(Through)],
            Headlamp = car.Headlamp is { } lamp ? Through(lamp) : null,
        };
        changed = Roll(car, changed);
        var with = load with { Loads = [.. load.Loads.Select(Through)] };
        return (changed with { Brakes = Brakes(car.Brakes) }, with);
    }

    private BrakeGeometry? Brakes(BrakeGeometry? brakes)
    {
        if (brakes is not null)
        {
            return Through(brakes);
        }

        var guess = BrakeGeometry.AssumedWheelRadius;
        var drawn = visitor.Visit("wheel radius", guess);
        return drawn == guess ? null : new BrakeGeometry { WheelRadius = drawn };
    }

    private Car Roll(Car car, Car changed)
    {
        if (car.Body.RollInertia is not null || car.Kind == VehicleKind.TwoWheeler)
        {
            return changed;
        }

        var rule = InertiaEstimate.RollGyrationPerTrack;
        var drawn = visitor.Visit("roll gyration per track", rule);
        if (drawn.Si == rule.Si)
        {
            return changed;
        }

        var inertia = SprungBody.Of(changed).RollInertia * drawn.Si * drawn.Si / (rule.Si * rule.Si);
        return changed with { Body = changed.Body with { RollInertia = new Amount<Inertia>(inertia) } };
    }

    private Weighing Through(Weighing w) => w with
    {
        FrontLeft = visitor.Visit("front left weight", w.FrontLeft),
        FrontRight = visitor.Visit("front right weight", w.FrontRight),
        RearLeft = visitor.Visit("rear left weight", w.RearLeft),
        RearRight = visitor.Visit("rear right weight", w.RearRight),
    };

    private Body Through(Body body) => body with
    {
        CentreHeight = visitor.Visit("height of the centre of gravity", body.CentreHeight),
        PitchAxisHeight = Maybe("height of the pitch axis", body.PitchAxisHeight),
        RollAxisHeight = Maybe("height of the roll axis", body.RollAxisHeight),
        PitchInertia = Maybe("pitch inertia", body.PitchInertia),
        RollInertia = Maybe("roll inertia", body.RollInertia),
        DynamicIndex = body.PitchInertia is null ? visitor.Visit("dynamic index", body.DynamicIndex) : body.DynamicIndex,
    };

    private Axle Through(string end, Axle axle) => axle with
    {
        Track = visitor.Visit($"{end} track", axle.Track),
        UnsprungMass = visitor.Visit($"{end} unsprung mass", axle.UnsprungMass),
        RollInertia = Maybe($"{end} axle roll inertia", axle.RollInertia),
        SpringBase = Maybe($"{end} spring base", axle.SpringBase),
        DamperBase = Maybe($"{end} damper base", axle.DamperBase),
        StopBase = Maybe($"{end} stop base", axle.StopBase),
        Spring = Through(end, axle.Spring),
        Damper = axle.Damper with
        {
            Law = axle.Damper.Law switch
            {
                RatioDamper ratio => ratio with
                {
                    Ratio = visitor.Visit($"{end} damping ratio", ratio.Ratio),
                    ReboundPerBump = visitor.Visit($"{end} rebound per bump", ratio.ReboundPerBump),
                },
                TableDamper table => visitor.Visit($"{end} damper table", table),
                var other => other,
            },
            MotionRatio = Through($"{end} damper", axle.Damper.MotionRatio),
            // The name is that of the gas on the scales, whatever dampers stand there now.
            WeighedGasForce = Maybe($"{end} damper gas force", axle.Damper.WeighedGasForce),
            GasForce = visitor.Visit(
                axle.Damper.WeighedGasForce is null ? $"{end} damper gas force" : $"{end} bought damper gas force", axle.Damper.GasForce),
        },
        BumpStop = Through($"{end} bump stop", axle.BumpStop),
        ReboundStop = Through($"{end} rebound stop", axle.ReboundStop),
        Friction = axle.Friction with
        {
            HalfWidth = visitor.Visit($"{end} friction", axle.Friction.HalfWidth),
            PreSliding = visitor.Visit($"{end} friction pre-sliding travel", axle.Friction.PreSliding),
            SpeedScale = visitor.Visit($"{end} friction speed scale", axle.Friction.SpeedScale),
        },
        AntiRollBar = visitor.Visit($"{end} anti-roll bar", axle.AntiRollBar),
        Tyre = axle.Tyre with
        {
            Rate = visitor.Visit($"{end} tyre rate", axle.Tyre.Rate),
            Damping = visitor.Visit($"{end} tyre damping", axle.Tyre.Damping),
            ContactLength = visitor.Visit($"{end} contact length", axle.Tyre.ContactLength),
        },
    };

    // The names of a spring are those of the one that stood on the scales, whatever stands in its place.
    private Spring Through(string end, Spring spring)
    {
        if (spring.Swap is not { } swap)
        {
            var weighed = new Spring
            {
                Law = new SpringAmounts(end, visitor).Through(spring.Law),
                MotionRatio = Through($"{end} spring", spring.MotionRatio),
            };
            return Lengths($"{end} spring", spring, weighed);
        }

        var before = Through(end, swap.Before);
        var bought = new SpringAmounts($"{end} bought", visitor);
        var standsBy = bought.Through(swap.StandsBy);
        return Lengths($"{end} bought spring", spring, spring with
        {
            Law = SpringAmounts.Beside(spring.Law, swap.StandsBy, standsBy),
            MotionRatio = before.MotionRatio,
            Swap = swap with
            {
                Before = before,
                StandsBy = standsBy,
                Seat = visitor.Visit($"{end} bought spring seat", swap.Seat),
                Preload = Maybe($"{end} bought spring preload", swap.Preload),
            },
        });
    }

    private Spring Lengths(string what, Spring from, Spring onto) => onto with
    {
        FreeLength = Maybe($"{what} free length", from.FreeLength),
        InstalledLength = Maybe($"{what} installed length", from.InstalledLength),
        BlockLength = Maybe($"{what} block length", from.BlockLength),
    };

    private MotionRatio Through(string what, MotionRatio ratio) => ratio with
    {
        AtReference = visitor.Visit($"{what} motion ratio", ratio.AtReference),
        PerTravel = visitor.Visit($"{what} motion ratio's change", ratio.PerTravel),
    };

    private Stop? Through(string what, Stop? stop) => stop is null ? null : stop with
    {
        Clearance = visitor.Visit($"{what} clearance", stop.Clearance),
        Rate = Maybe($"{what} rate", stop.Rate),
        Exponent = visitor.Visit($"{what} exponent", stop.Exponent),
        Table = stop.Table is { } table ? visitor.Visit($"{what} table", table) : null,
        SolidAfter = Maybe($"{what} solid length", stop.SolidAfter),
    };

    private ElasticLink Through(ElasticLink link) => link with
    {
        Rate = visitor.Visit("link rate", link.Rate),
        Damping = visitor.Visit("link damping", link.Damping),
        FrontRatio = visitor.Visit("link front ratio", link.FrontRatio),
        RearRatio = visitor.Visit("link rear ratio", link.RearRatio),
        Carried = visitor.Visit("link force", link.Carried),
    };

    private FluidLink Through(FluidLink link) => link with
    {
        FrontArea = visitor.Visit("front displacer area", link.FrontArea),
        RearArea = visitor.Visit("rear displacer area", link.RearArea),
        Front = Through("front", link.Front),
        Rear = Through("rear", link.Rear),
        BasePressure = visitor.Visit("base pressure", link.BasePressure),
        Line = link.Line with
        {
            Inertance = visitor.Visit("line inertance", link.Line.Inertance),
            Resistance = visitor.Visit("line resistance", link.Line.Resistance),
        },
    };

    private Accumulator Through(string end, Accumulator unit) => unit with
    {
        Compliance = Maybe($"{end} unit's compliance", unit.Compliance),
        GasVolume = Maybe($"{end} unit's gas volume", unit.GasVolume),
        Exponent = visitor.Visit($"{end} unit's gas exponent", unit.Exponent),
    };

    private BrakeGeometry Through(BrakeGeometry brakes) => brakes with
    {
        FrontBrakeShare = Maybe("front brake share", brakes.FrontBrakeShare),
        AntiDiveFront = visitor.Visit("anti-dive", brakes.AntiDiveFront),
        AntiLiftRear = visitor.Visit("anti-lift", brakes.AntiLiftRear),
        AntiSquatRear = visitor.Visit("anti-squat", brakes.AntiSquatRear),
        AntiLiftFront = visitor.Visit("driven anti-lift", brakes.AntiLiftFront),
        WheelRadius = visitor.Visit("wheel radius", brakes.WheelRadius),
        ForkRake = Maybe("fork rake", brakes.ForkRake),
    };

    private Seat Through(Seat seat) => seat with
    {
        BehindFrontAxle = visitor.Visit($"{seat.Name} seat behind the front axle", seat.BehindFrontAxle),
        LeftOfMiddle = visitor.Visit($"{seat.Name} seat left of the middle", seat.LeftOfMiddle),
        Height = visitor.Visit($"{seat.Name} seat height", seat.Height),
        HeadAboveSeat = visitor.Visit($"{seat.Name} head above the seat", seat.HeadAboveSeat),
    };

    private Headlamp Through(Headlamp lamp) => lamp with
    {
        Height = visitor.Visit("headlamp height", lamp.Height),
        AheadOfFrontAxle = visitor.Visit("headlamp ahead of the front axle", lamp.AheadOfFrontAxle),
        Drop = visitor.Visit("headlamp drop", lamp.Drop),
    };

    private Load Through(Load load) => load with
    {
        Mass = visitor.Visit($"{load.Name} mass", load.Mass),
        BehindFrontAxle = visitor.Visit($"{load.Name} behind the front axle", load.BehindFrontAxle),
        LeftOfMiddle = visitor.Visit($"{load.Name} left of the middle", load.LeftOfMiddle),
        Height = visitor.Visit($"{load.Name} height", load.Height),
    };

    private Amount<TDimension>? Maybe<TDimension>(string path, Amount<TDimension>? amount)
        where TDimension : struct, IDimension => amount is { } given ? visitor.Visit(path, given) : null;
}
