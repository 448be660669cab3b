using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>One car on a device: its state and numbers.</summary>
internal struct DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
    where TDampers : unmanaged, IKinkChain<TDampers, T>
    where TAbove : unmanaged, IKinkChain<TAbove, T>
    where TBelow : unmanaged, IKinkChain<TBelow, T>
    where TFurther : unmanaged, IDeviceFurther<TFurther, T>
{
    public BodyBlock<T> Body;
    public BodyPast<T> BodyNow;
    private AxleBlock<T, TSides> front;
    private AxleBlock<T, TSides> rear;
    private KinksInside<T, TDampers, TAbove, TBelow> frontKinks;
    private KinksInside<T, TDampers, TAbove, TBelow> rearKinks;
    private TFurther further;
    private PairHistory<T> frontPast;
    private PairHistory<T> rearPast;
    private BodyPast<T> bodyOne;
    private BodyPast<T> bodyTwo;
    private BodyPast<T> bodyThree;

    /// <summary>Wheels of the front axle.</summary>
    public readonly AxleState<T> Front => front.State;

    /// <summary>Wheels of the rear axle.</summary>
    public readonly AxleState<T> Rear => rear.State;

    /// <summary>Accelerations of the front wheels at this step.</summary>
    public readonly PairPast<T> FrontNow => frontPast.Now;

    /// <summary>Accelerations of the rear wheels at this step.</summary>
    public readonly PairPast<T> RearNow => rearPast.Now;

    /// <summary>Reads its numbers, in the order in which they are packed; at rest at trim.</summary>
    /// <param name="numbers">Its numbers.</param>
    /// <param name="a">What the launch reads.</param>
    public static DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther> Read(
        ref NumberReader<T> numbers, in DeviceArguments<T> a)
    {
        DeviceCar<T, TSides, TDampers, TAbove, TBelow, TFurther> car = default;
        car.Body.PerMass = numbers.Next();
        car.Body.PitchPerPitch = numbers.Next();
        car.Body.RollPerRoll = numbers.Next();
        car.Body.PitchPerRoll = numbers.Next();
        car.Body.PitchGravity = numbers.Next();
        car.Body.RollGravity = numbers.Next();
        Read(ref numbers, ref car.front.State, ref car.front.Numbers);
        car.frontKinks = KinksInside<T, TDampers, TAbove, TBelow>.Read(ref numbers, a.FrontPlaces);
        Read(ref numbers, ref car.rear.State, ref car.rear.Numbers);
        car.rearKinks = KinksInside<T, TDampers, TAbove, TBelow>.Read(ref numbers, a.RearPlaces);
        car.further = TFurther.Read(ref numbers);
        return car;
    }

    /// <summary>One step.</summary>
    /// <param name="a">What the launch reads.</param>
    /// <param name="at">The step in the launch's roads.</param>
    public void Step(in DeviceArguments<T> a, int at)
    {
        further.Add(ref front.State, ref rear.State, in Body, a.Needs);
        var here = a.Road[at];
        RoadUnder<T> road = default;
        road.HeightL = here.HeightFrontLeft;
        road.HeightR = here.HeightFrontRight;
        road.RiseL = here.RiseFrontLeft;
        road.RiseR = here.RiseFrontRight;
        AxleStep<T, TSides>.Run(ref front, in frontKinks, in Body, in a.Rule, in road, ref frontPast);
        road.HeightL = here.HeightRearLeft;
        road.HeightR = here.HeightRearRight;
        road.RiseL = here.RiseRearLeft;
        road.RiseR = here.RiseRearRight;
        AxleStep<T, TSides>.Run(ref rear, in rearKinks, in Body, in a.Rule, in road, ref rearPast);
        BodyStep<T, T, TwoBlocks<T>>.Run(
            ref Body, in front.State, in rear.State, in a.Rule, ref BodyNow, in bodyOne, in bodyTwo, in bodyThree);
    }

    /// <summary>
    /// This step becomes the last. Written out four times over, a loop ends with every past acceleration where it began: none is moved.
    /// </summary>
    public void Pass()
    {
        Pass(ref frontPast);
        Pass(ref rearPast);
        bodyThree = bodyTwo;
        bodyTwo = bodyOne;
        bodyOne = BodyNow;
    }

    private static void Pass(ref PairHistory<T> past)
    {
        past.Three = past.Two;
        past.Two = past.One;
        past.One = past.Now;
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
