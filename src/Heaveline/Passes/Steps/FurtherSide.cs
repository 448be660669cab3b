using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The further elements of one wheel. A car without an element has zeros there.</summary>
internal struct FurtherSide<T>
    where T : unmanaged, ILane<T>
{
    // Travel from trim and its rate at this step; travel at trim; what the plain elements start from.
    public T Travel;
    public T Rate;
    public T TrimTravel;
    public T Constant;

    public StopLaw<T> Bump;
    public StopLaw<T> Rebound;

    public FrictionLaw<T> Friction;
    public T Slider;

    // Springs, dampers and stops that see the other wheel too, or through a varying ratio.
    public PlaceLaw<T> SpringPlace;
    public PlaceLaw<T> DamperPlace;
    public PlaceLaw<T> StopPlace;
    public RatioLaw<T> SpringRatio;
    public RatioLaw<T> DamperRatio;
    public T SpringConstant;
    public T SpringSlope;
    public T GasForce;
    public GasLaw<T> Gas;
    public T DamperConstant;
    public T DamperSlope;
    public T StopConstant;
    public T StopSlope;

    // Elastic link: its ratio here. Line: displaced area, sign of the flow (+ out of the front),
    // base pressure, compliance and gas of the accumulator, its pressure.
    public T LinkRatio;
    public T FluidArea;
    public T FluidSign;
    public T FluidStiffness;
    public T FluidPressure;
    public T FluidGasPressure;
    public GasLaw<T> FluidGas;
    public T Pressure;
}
