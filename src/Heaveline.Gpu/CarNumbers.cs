using Heaveline.Elements.Forces;
using Heaveline.Gpu.Kernels;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu;

/// <summary>The numbers of cars as a device reads them, number j of car i at j·cars + i; packed by the packing of the lanes.</summary>
internal static unsafe class CarNumbers<T>
    where T : unmanaged, ILane<T>
{
    private const int Body = 6;
    private const int State = 5;
    private const int Sides = 8;

    /// <summary>Numbers of one car.</summary>
    public static int CountOf(BlockPlan plan)
    {
        var side = plan.SidesAlike ? 1 : 2;
        var axle = State + (Sides * side) + (2 * plan.Kinks.Dampers) + (2 * side * (plan.Kinks.Above + plan.Kinks.Below));
        return Body + (2 * axle) + (plan.IsFurther ? 4 * StopsAndFriction<T>.SideNumbers : 0);
    }

    /// <summary>
    /// The places of an axle's damper kinks where all cars have the same, and there is room for them; none where not.
    /// </summary>
    public static T[] Places(BlockPlan plan, bool front, T[] packed, int cars)
    {
        var axle = (CountOf(plan) - Body - (plan.IsFurther ? 4 * StopsAndFriction<T>.SideNumbers : 0)) / 2;
        var first = Body + (front ? 0 : axle) + State + (Sides * (plan.SidesAlike ? 1 : 2));
        var places = new T[plan.Kinks.Dampers];
        for (var j = 0; j < places.Length; j++)
        {
            var row = packed.AsSpan((first + (2 * j)) * cars, cars);
            if (places.Length > DevicePlaces<T>.Most || !AreAll(row, row[0]))
            {
                return [];
            }

            places[j] = row[0];
        }

        return places;
    }

    /// <summary>Whether all numbers are one.</summary>
    public static bool AreAll(ReadOnlySpan<T> numbers, T value)
    {
        var same = true;
        for (var i = 0; same && i < numbers.Length; i++)
        {
            same = !T.AnyAbove(numbers[i], value) && !T.AnyAbove(value, numbers[i]);
        }

        return same;
    }

    /// <summary>Writes cars.</summary>
    /// <param name="plan">Has room for all of them.</param>
    /// <param name="cars">The cars.</param>
    /// <param name="first">Where the first of them stands.</param>
    /// <param name="numbers">Receives the numbers.</param>
    /// <param name="all">How many cars the numbers are of.</param>
    public static void Write(BlockPlan plan, ReadOnlySpan<RideNumbers> cars, int first, Span<T> numbers, int all)
    {
        for (var at = 0; at < cars.Length; at += Lane512.Count)
        {
            var some = cars.Slice(at, Math.Min(Lane512.Count, cars.Length - at));
            if (plan.SidesAlike)
            {
                Write<Alike<Lane512>>(plan, some, first + at, numbers, all);
            }
            else
            {
                Write<Apart<Lane512>>(plan, some, first + at, numbers, all);
            }
        }
    }

    private static void Write<TSides>(BlockPlan plan, ReadOnlySpan<RideNumbers> cars, int first, Span<T> numbers, int all)
        where TSides : unmanaged, ISides<TSides, Lane512>
    {
        using var set = new BlockSet<Lane512, TSides>(plan, 2);
        BlockPacking<Lane512, TSides>.Write(set, cars);
        var to = new Writing(numbers, first, cars.Length, all);
        to.Add(&set.Body->PerMass, 1);
        to.Add(&set.Body->PitchPerPitch, 1);
        to.Add(&set.Body->RollPerRoll, 1);
        to.Add(&set.Body->PitchPerRoll, 1);
        to.Add(&set.Body->PitchGravity, 1);
        to.Add(&set.Body->RollGravity, 1);
        Axle(plan, set.Front, ref to);
        Axle(plan, set.Rear, ref to);
        if (plan.IsFurther)
        {
            Side(&set.FrontFurther->L, ref to);
            Side(&set.FrontFurther->R, ref to);
            Side(&set.RearFurther->L, ref to);
            Side(&set.RearFurther->R, ref to);
        }
    }

    private static void Axle<TSides>(BlockPlan plan, AxleBlock<Lane512, TSides>* axle, ref Writing to)
        where TSides : unmanaged, ISides<TSides, Lane512>
    {
        var state = &axle->State;
        var numbers = &axle->Numbers;
        to.Add(&state->NegX, 1);
        to.Add(&state->NegYL, 1);
        to.Add(&state->NegYR, 1);
        to.Add(&state->StartL, 1);
        to.Add(&state->StartR, 1);
        to.Add((Lane512*)&numbers->Rate, TSides.Count);
        to.Add((Lane512*)&numbers->Cross, TSides.Count);
        to.Add((Lane512*)&numbers->Damping, TSides.Count);
        to.Add((Lane512*)&numbers->TyreRate, TSides.Count);
        to.Add((Lane512*)&numbers->TyreDamping, TSides.Count);
        to.Add((Lane512*)&numbers->Unload, TSides.Count);
        to.Add((Lane512*)&numbers->PerWheel, TSides.Count);
        to.Add((Lane512*)&numbers->AcrossAxle, TSides.Count);
        // Kinks follow the block without a gap.
        to.Add((Lane512*)(axle + 1), 2 * (plan.Kinks.Dampers + (TSides.Count * (plan.Kinks.Above + plan.Kinks.Below))));
    }

    private static void Side(FurtherSide<Lane512>* side, ref Writing to)
    {
        to.Add(&side->TrimTravel, 1);
        to.Add(&side->Constant, 1);
        Stop(&side->Bump, ref to);
        Stop(&side->Rebound, ref to);
        to.Add(&side->Friction.Rate, 1);
        to.Add(&side->Friction.PreSliding, 1);
    }

    private static void Stop(StopLaw<Lane512>* stop, ref Writing to)
    {
        to.Add(&stop->Clearance, 1);
        to.Add(&stop->Factor, 1);
        to.Add(&stop->Exponent, 1);
    }

    private ref struct Writing(Span<T> numbers, int first, int cars, int all)
    {
        private readonly Span<T> numbers = numbers;
        private int at = first;

        public void Add(Lane512* from, int count)
        {
            for (var j = 0; j < count; j++, at += all)
            {
                var lanes = (double*)(from + j);
                for (var lane = 0; lane < cars; lane++)
                {
                    numbers[at + lane] = T.Of(lanes[lane]);
                }
            }
        }
    }
}
