using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Quantities;

namespace Heaveline.Parts;

/// <summary>One part put into its place.</summary>
internal static class PartMount
{
    // Seats and coils are turned to a millimetre; a spigot takes a coil that is wider by so much (common practice, no source).
    private const double SeatPlay = 2e-3;

    /// <summary>Puts a part in; what does not fit, whatever else is fitted, is told and left out.</summary>
    /// <param name="car">The car so far, changed where the part goes in.</param>
    /// <param name="before">The car before all parts.</param>
    /// <param name="part">The part.</param>
    public static Misfit? Put(ref Car car, Car before, FittedPart part)
    {
        if (!part.Option.Part.Goes(part.Place))
        {
            return Bad(part, MisfitKind.OtherPlace);
        }

        if (part.Place == PartPlace.Link)
        {
            return Link(ref car, part);
        }

        var end = part.Place.End()!.Value;
        var (axle, weighing) = (end == AxleEnd.Front ? car.Front : car.Rear, car.Weighing);
        var misfit = part.Place.Sort() switch
        {
            PartSort.Spring => Spring(ref axle, before, end, part),
            PartSort.Damper => Damper(ref axle, part),
            PartSort.Bar => Bar(ref axle, car.Kind, part),
            PartSort.Stop => Stop(ref axle, part),
            _ => Tyre(ref axle, ref weighing, car.Kind, end, part),
        };
        if (misfit is null)
        {
            car = end == AxleEnd.Front ? car with { Front = axle, Weighing = weighing } : car with { Rear = axle, Weighing = weighing };
        }

        return misfit;
    }

    private static Misfit? Spring(ref Axle axle, Car car, AxleEnd end, FittedPart part)
    {
        var (present, bought) = (axle.Spring, part.Option.Spring!);
        var weighed = present.Swap?.Before ?? present;
        if (weighed.Law is LinearSpring { Dimensions: TorsionBarDimensions or LeafDimensions } or LinearSpring { Origin: LinearSpring.AtWheel })
        {
            return Bad(part, MisfitKind.NoCoilSeats);
        }

        if ((present.SeatDiameter ?? weighed.SeatDiameter) is { } seats && bought.SeatDiameter is { } ends
            && Math.Abs(seats.Si - ends.Si) > SeatPlay + seats.Doubt.HalfWidth + ends.Doubt.HalfWidth)
        {
            return new Misfit(part.Place, part.Option.Name, MisfitKind.SeatDiameter, ends.Si, seats.Si);
        }

        var isPlaced = bought.FreeLength is not null && (weighed.FreeLength ?? weighed.InstalledLength) is not null;
        if (part.Packing.Si != 0.0 && !isPlaced)
        {
            return Bad(part, MisfitKind.NowhereToPack);
        }

        if (bought.Law is TableSpring { Table: var table })
        {
            var (left, right) = CarElements.Weighed(car, end);
            var most = Math.Max(left, right);
            if (!double.IsFinite(table.AtForce(most)))
            {
                return new Misfit(part.Place, part.Option.Name, MisfitKind.CannotCarry, table.Force[^1], most);
            }
        }

        axle = axle with
        {
            Spring = bought with
            {
                MotionRatio = weighed.MotionRatio,
                SeatDiameter = bought.SeatDiameter ?? weighed.SeatDiameter,
                Swap = new SpringSwap { Before = weighed, StandsBy = bought.Law, Seat = part.Packing },
            },
        };
        return null;
    }

    private static Misfit? Damper(ref Axle axle, FittedPart part)
    {
        var present = axle.Damper;
        if (present.Law is RatioDamper)
        {
            return Bad(part, MisfitKind.NoDamperRatio);
        }

        // The dampers that stood there on the scales say what the springs carried.
        axle = axle with
        {
            Damper = part.Option.GasForce is { } gas && !part.IsThere
                ? present with { Law = part.Option.Damping!, GasForce = gas, WeighedGasForce = present.WeighedGasForce ?? present.GasForce }
                : present with { Law = part.Option.Damping! },
        };
        return null;
    }

    private static Misfit? Bar(ref Axle axle, VehicleKind vehicle, FittedPart part)
    {
        if (vehicle == VehicleKind.TwoWheeler)
        {
            return Bad(part, MisfitKind.NoBar);
        }

        axle = axle with { AntiRollBar = part.Option.BarRate!.Value };
        return null;
    }

    // The stops stand on the same ground: a longer one touches sooner by what it is longer, and one that is cut later by what was cut off. Where the
    // length of the one that is there is not known, the whole new one is taken to touch where that did.
    private static Misfit? Stop(ref Axle axle, FittedPart part)
    {
        if (axle.BumpStop is not { } present)
        {
            return Bad(part, MisfitKind.NoStop);
        }

        var stop = (StopPart)part.Option.Part;
        if (stop.PerWheel is null && axle.Damper.Law is RatioDamper)
        {
            return Bad(part, MisfitKind.NoDamperRatio);
        }

        var (ratio, cut) = ((stop.PerWheel ?? axle.Damper.MotionRatio.AtReference).Si, part.Option.Cut?.Si ?? 0.0);
        var shorter = (present.Length is { } old ? old.Si - stop.Length.Si : 0.0) + cut;
        var clearance = present.Clearance.Si + (shorter / ratio);
        if (clearance < 0.0)
        {
            return new Misfit(part.Place, part.Option.Name, MisfitKind.StopTouches, clearance, 0.0);
        }

        var doubt = Math.Sqrt(
            Square(present.Clearance.Doubt.HalfWidth)
            + Square((present.Length?.Doubt.HalfWidth ?? 0.0) / ratio)
            + Square((present.Length is null ? 0.0 : stop.Length.Doubt.HalfWidth) / ratio)
            + Square((part.Option.Cut?.Doubt.HalfWidth ?? 0.0) / ratio));
        axle = axle with { BumpStop = stop.AtWheel(cut, ratio, new Amount<Length>(clearance, present.Clearance.Doubt with { HalfWidth = doubt })) };
        return null;
    }

    // What the wheel weighs more stands on the scales, not on the springs: the sprung mass stays.
    private static Misfit? Tyre(ref Axle axle, ref Weighing weighing, VehicleKind vehicle, AxleEnd end, FittedPart part)
    {
        var tyre = (TyrePart)part.Option.Part;
        var (each, wheels) = (tyre.Unsprung.Si, vehicle == VehicleKind.TwoWheeler ? 1.0 : 2.0);
        var unsprung = axle.UnsprungMass.Si + (wheels * each);
        if (!(unsprung > 0.0))
        {
            return new Misfit(part.Place, part.Option.Name, MisfitKind.UnsprungMass, unsprung, 0.0);
        }

        // A solid axle turns with its wheels at half the track.
        Amount<Inertia>? inertia = axle.RollInertia is { } roll
            ? roll with { Si = roll.Si + (wheels * each * Square(0.5 * axle.Track.Si)) }
            : null;
        axle = axle with { Tyre = part.Option.Tyre!, UnsprungMass = axle.UnsprungMass with { Si = unsprung }, RollInertia = inertia };
        var side = 0.5 * wheels * each;
        weighing = end == AxleEnd.Front
            ? weighing with { FrontLeft = More(weighing.FrontLeft, side), FrontRight = More(weighing.FrontRight, side) }
            : weighing with { RearLeft = More(weighing.RearLeft, side), RearRight = More(weighing.RearRight, side) };
        return null;
    }

    private static Misfit? Link(ref Car car, FittedPart part)
    {
        if (car.Interconnection is not (null or ElasticLink { Carried.Si: 0.0 }))
        {
            return Bad(part, MisfitKind.LinkCarries);
        }

        car = car with { Interconnection = part.Option.Link };
        return null;
    }

    private static Amount<Mass> More(Amount<Mass> mass, double added) => mass with { Si = mass.Si + added };

    private static Misfit Bad(FittedPart part, MisfitKind kind) => new(part.Place, part.Option.Name, kind, double.NaN, double.NaN);

    private static double Square(double x) => x * x;
}
