using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>
/// A road as the four wheels of one car meet it: averaged over each tyre's contact length, the rear a wheelbase later, every track counted from its
/// first height, so that the car starts level and at rest.
/// </summary>
internal sealed class RoadUnderWheels
{
    private readonly Profile frontLeft;
    private readonly Profile frontRight;
    private readonly Profile rearLeft;
    private readonly Profile rearRight;
    private readonly double wheelbase;
    private readonly ChangingSpeed? changing;

    private RoadUnderWheels(Road front, Road rear, double wheelbase, ChangingSpeed? changing = null)
    {
        (FrontRoad, RearRoad, this.changing) = (front, rear, changing);
        (frontLeft, frontRight) = (front.Left, front.Right);
        (rearLeft, rearRight) = (rear.Left, rear.Right);
        this.wheelbase = wheelbase;
    }

    private Road FrontRoad { get; }

    private Road RearRoad { get; }

    /// <summary>The profile under wheel i, not yet shifted by the wheelbase nor set to zero at its start.</summary>
    public Profile this[int wheel] => wheel switch { 0 => frontLeft, 1 => frontRight, 2 => rearLeft, _ => rearRight };

    /// <summary>How far behind the front wheels wheel i meets the road, m.</summary>
    public double Behind(int wheel) => wheel < 2 ? 0.0 : wheelbase;

    /// <summary>How much higher than its start the road under wheel i ends, m.</summary>
    public double Rise(int wheel) => this[wheel].EndHeight - this[wheel].StartHeight;

    /// <exception cref="RefusedValueException">A height jumps under a damped tyre without contact length.</exception>
    public static RoadUnderWheels Of(RideModel model, Road road) => Of(model, road, road.AveragedOver);

    /// <summary>The same with the caller's own averaging over a contact length, which may remember what it has averaged before.</summary>
    public static RoadUnderWheels Of(RideModel model, Road road, Func<Amount<Length>, Road> averaged)
    {
        var front = model.Car.Front.Tyre;
        var rear = model.Car.Rear.Tyre;
        var atFront = averaged(front.ContactLength);
        var atRear = rear.ContactLength.Si == front.ContactLength.Si ? atFront : averaged(rear.ContactLength);
        if (!model.Rolls && road.Side is { } side)
        {
            (atFront, atRear) = (atFront.On(side), atRear.On(side));
        }

        if ((atFront.HasJump && front.Damping.Si > 0.0) || (atRear.HasJump && rear.Damping.Si > 0.0))
        {
            throw new RefusedValueException(
                "road",
                $"'{road.Name}' with a sharp step",
                "without a step under a damped tyre",
                "A step would be an infinite rate: give the step an edge length, or the tyre a contact length.");
        }

        return new RoadUnderWheels(atFront, atRear, model.Car.Wheelbase.Si);
    }

    /// <summary>The same road met at a changing speed: the speed that a run is given does not count.</summary>
    /// <exception cref="RefusedValueException">A height jumps: where in time it does is known for a constant speed alone.</exception>
    public RoadUnderWheels At(ChangingSpeed speed) => HasJump
        ? throw new RefusedValueException(
            "road at a changing speed", "with a sharp step", "without one", "Give the step an edge length, or the tyre a contact length.")
        : new(FrontRoad, RearRoad, wheelbase, speed);

    /// <summary>
    /// Of n steps from start on, the first at which a wheel may be off the level and the first from which all are on the last level. Before and after
    /// these nothing changes: no profile need be read.
    /// </summary>
    public (int First, int Last) Moving(double speed, double start, double step, int n)
    {
        if (changing is not null)
        {
            return (0, n);
        }

        var begin = Math.Min(Math.Min(frontLeft.Start, frontRight.Start), Math.Min(rearLeft.Start, rearRight.Start) + wheelbase);
        var end = Math.Max(Math.Max(frontLeft.End, frontRight.End), Math.Max(rearLeft.End, rearRight.End) + wheelbase);
        var first = Math.Clamp((int)Math.Floor((begin - (speed * start)) / (speed * step)) - 1, 0, n);
        return (first, Math.Clamp((int)Math.Ceiling((end - (speed * start)) / (speed * step)) + 1, first, n));
    }

    /// <summary>Whether a height jumps under a wheel.</summary>
    public bool HasJump => frontLeft.HasJump || frontRight.HasJump || rearLeft.HasJump || rearRight.HasJump;

    /// <summary>The sharp steps under the wheels, in the order of a run's steps.</summary>
    public RoadJump<ScalarLane>[] Jumps(double speed, double start, double step)
    {
        return !HasJump
            ? []
            :
            [
                .. Enumerable.Range(0, 4)
                    .SelectMany(i => RoadJumps.Of(this[i], Behind(i), speed, start, step).Select(jump => (Jump: jump, Corner: i)))
                    .OrderBy(j => j.Jump.At)
                    .Select(j => new RoadJump<ScalarLane>(
                        j.Jump.At, Only(j.Corner, j.Jump.Near), Only(j.Corner, j.Jump.Far), Only(j.Corner, j.Jump.Share))),
            ];

        static Quad<ScalarLane> Only(int corner, double value)
        {
            ScalarLane At(int i) => new(i == corner ? value : 0.0);
            return Quad<ScalarLane>.Of(At(0), At(1), At(2), At(3));
        }
    }

    /// <summary>Heights and rates at n times from start on, step apart: two quads a time.</summary>
    public Quad<ScalarLane>[] Table(double speed, double start, double step, int n)
    {
        var table = new Quad<ScalarLane>[2 * n];
        Read(table, Readers(), speed, start, 0, step);
        return table;
    }

    /// <summary>Readers of the profiles under the four wheels, for one run.</summary>
    public ProfileReader[] Readers() => [frontLeft.Reader(), frontRight.Reader(), rearLeft.Reader(), rearRight.Reader()];

    /// <summary>Heights and rates from step first of a run on, two quads for each of the table's times.</summary>
    public void Read(Span<Quad<ScalarLane>> table, ProfileReader[] readers, double speed, double start, int first, double step)
    {
        var one = ReferenceEquals(frontLeft, frontRight) && ReferenceEquals(rearLeft, rearRight);
        ProfileReader fl = readers[0], fr = readers[1], rl = readers[2], rr = readers[3];
        double fl0 = frontLeft.StartHeight, fr0 = frontRight.StartHeight, rl0 = rearLeft.StartHeight, rr0 = rearRight.StartHeight;
        for (var k = 0; k < table.Length / 2; k++)
        {
            // The time counts from the record's start, not from the first step read: the same bits whatever is skipped.
            var t = start + ((first + k) * step);
            var x = speed * t;
            if (changing is not null)
            {
                changing.At(t, out x, out speed);
            }

            fl.At(x, out var a, out var da);
            rl.At(x - wheelbase, out var c, out var dc);
            var (b, db, d, dd) = (a, da, c, dc);
            if (!one)
            {
                fr.At(x, out b, out db);
                rr.At(x - wheelbase, out d, out dd);
            }

            table[2 * k] = Quad<ScalarLane>.Of(new(a - fl0), new(b - fr0), new(c - rl0), new(d - rr0));
            table[(2 * k) + 1] = Quad<ScalarLane>.Of(new(speed * da), new(speed * db), new(speed * dc), new(speed * dd));
        }
    }
}
