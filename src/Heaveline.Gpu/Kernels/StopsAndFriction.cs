using Heaveline.Elements.Forces;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>Stops of curved force, and friction that sticks.</summary>
internal struct StopsAndFriction<T> : IDeviceFurther<StopsAndFriction<T>, T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Numbers of one wheel, in the order in which they are read.</summary>
    public const int SideNumbers = 10;

    private FurtherBlock<T> front;
    private FurtherBlock<T> rear;

    public static StopsAndFriction<T> Read(ref NumberReader<T> numbers)
    {
        StopsAndFriction<T> further = default;
        Read(ref numbers, ref further.front.L);
        Read(ref numbers, ref further.front.R);
        Read(ref numbers, ref further.rear.L);
        Read(ref numbers, ref further.rear.R);
        return further;
    }

    public void Add(ref AxleState<T> front, ref AxleState<T> rear, in BodyBlock<T> body, int needs)
    {
        Add(ref front, ref this.front, in body, needs);
        Add(ref rear, ref this.rear, in body, needs);
    }

    private static void Add(ref AxleState<T> axle, ref FurtherBlock<T> elements, in BodyBlock<T> body, int needs)
    {
        FurtherForces<T>.Begin(ref axle, in body, ref elements);
        if ((needs & (int)Needs.CurvedStop) != 0)
        {
            FurtherForces<T>.Stops(ref axle, in elements);
        }

        if ((needs & (int)Needs.Friction) != 0)
        {
            FurtherForces<T>.Friction(ref axle, ref elements);
        }
    }

    private static void Read(ref NumberReader<T> numbers, ref FurtherSide<T> side)
    {
        side.TrimTravel = numbers.Next();
        side.Constant = numbers.Next();
        side.Bump = Stop(ref numbers);
        side.Rebound = Stop(ref numbers);
        FrictionLaw<T> friction = default;
        friction.Rate = numbers.Next();
        friction.PreSliding = numbers.Next();
        side.Friction = friction;
    }

    private static StopLaw<T> Stop(ref NumberReader<T> numbers)
    {
        StopLaw<T> stop = default;
        stop.Clearance = numbers.Next();
        stop.Factor = numbers.Next();
        stop.Exponent = numbers.Next();
        return stop;
    }
}
