using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu;

/// <summary>One car on a device: its state and numbers.</summary>
internal struct DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
    where TDampers : unmanaged, IKinkChain<TDampers, T>
    where TAbove : unmanaged, IKinkChain<TAbove, T>
    where TBelow : unmanaged, IKinkChain<TBelow, T>
    where TFurther : unmanaged, IDeviceFurther<TFurther, T>
{
    public AxleState<T> Front;
    public AxleState<T> Rear;
    public BodyBlock<T> Body;
    private AxleNumbers<T, TSides> frontNumbers;
    private AxleNumbers<T, TSides> rearNumbers;
    private KinksInside<T, TDampers, TAbove, TBelow> frontKinks;
    private KinksInside<T, TDampers, TAbove, TBelow> rearKinks;
    private TFurther further;

    /// <summary>Reads its numbers, in the order in which <see cref="CarNumbers{T}"/> writes them; at rest at trim.</summary>
    public static DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther> Read(ref NumberReader<T> numbers)
    {
        DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther> car = default;
        car.Body.PerMass = numbers.Next();
        car.Body.PitchPerPitch = numbers.Next();
        car.Body.RollPerRoll = numbers.Next();
        car.Body.PitchPerRoll = numbers.Next();
        car.Body.PitchGravity = numbers.Next();
        car.Body.RollGravity = numbers.Next();
        Read(ref numbers, ref car.Front, ref car.frontNumbers);
        car.frontKinks = KinksInside<T, TDampers, TAbove, TBelow>.Read(ref numbers);
        Read(ref numbers, ref car.Rear, ref car.rearNumbers);
        car.rearKinks = KinksInside<T, TDampers, TAbove, TBelow>.Read(ref numbers);
        car.further = TFurther.Read(ref numbers);
        return car;
    }

    /// <summary>One step.</summary>
    /// <param name="a">What the launch reads.</param>
    /// <param name="at">Where the road under the wheels stands.</param>
    /// <param name="now">Takes this step's accelerations.</param>
    /// <param name="past1">Those of the step before.</param>
    /// <param name="past2">Of the one before that.</param>
    /// <param name="past3">Of the first that counts.</param>
    public void Step(
        in DeviceArguments<T> a, long at, ref CarPast<T> now, in CarPast<T> past1, in CarPast<T> past2, in CarPast<T> past3)
    {
        further.Add(ref Front, ref Rear, in Body, a.Needs);
        var (frontLeft, frontRight) = (a.Road[at], a.Road[at + 1]);
        var (frontRiseLeft, frontRiseRight) = (a.Road[at + 4], a.Road[at + 5]);
        AxleStep<T, TSides, TSides>.Run(
            ref Front,
            in frontNumbers,
            frontKinks,
            in Body,
            in a.Rule,
            in frontLeft,
            in frontRight,
            in frontRiseLeft,
            in frontRiseRight,
            ref now.Front,
            in past1.Front,
            in past2.Front,
            in past3.Front);
        var (rearLeft, rearRight) = (a.Road[at + 2], a.Road[at + 3]);
        var (rearRiseLeft, rearRiseRight) = (a.Road[at + 6], a.Road[at + 7]);
        AxleStep<T, TSides, TSides>.Run(
            ref Rear,
            in rearNumbers,
            rearKinks,
            in Body,
            in a.Rule,
            in rearLeft,
            in rearRight,
            in rearRiseLeft,
            in rearRiseRight,
            ref now.Rear,
            in past1.Rear,
            in past2.Rear,
            in past3.Rear);
        BodyStep<T, T, TwoBlocks<T>>.Run(
            ref Body, in Front, in Rear, in a.Rule, ref now.Body, in past1.Body, in past2.Body, in past3.Body);
    }

    private static void Read(ref NumberReader<T> numbers, ref AxleState<T> state, ref AxleNumbers<T, TSides> axle)
    {
        state.NegX = numbers.Next();
        state.NegYL = numbers.Next();
        state.NegYR = numbers.Next();
        state.StartL = numbers.Next();
        state.StartR = numbers.Next();
        axle.Rate = numbers.Sides<TSides>();
        axle.Cross = numbers.Sides<TSides>();
        axle.Damping = numbers.Sides<TSides>();
        axle.TyreRate = numbers.Sides<TSides>();
        axle.TyreDamping = numbers.Sides<TSides>();
        axle.Unload = numbers.Sides<TSides>();
        axle.PerWheel = numbers.Sides<TSides>();
        axle.AcrossAxle = numbers.Sides<TSides>();
    }
}
