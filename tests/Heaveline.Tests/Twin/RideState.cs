using Heaveline.Numerics;

namespace Heaveline.Tests.Twin;

/// <summary>Where a car is and how it moves, about its trim; the kernel writes forces and accelerations beside it.</summary>
internal sealed class RideState<TQuad, TLane>
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    // Positions, rates and accelerations of heave, pitch, roll, wheels and fluid.
    public TLane Z;
    public TLane Theta;
    public TLane Phi;
    public TQuad U;
    public TQuad Flow;
    public TLane ZRate;
    public TLane ThetaRate;
    public TLane PhiRate;
    public TQuad URate;
    public TQuad FlowRate;
    public TLane ZDot;
    public TLane ThetaDot;
    public TLane PhiDot;
    public TQuad UDot;
    public TQuad FlowDot;

    // Wheel travel from the reference state and its rate.
    public TQuad Travel;
    public TQuad Rate;

    // Where friction's sliders stand, in travel from trim: the one thing that remembers the way here.
    public TQuad Slider;

    // Whole suspension force at the wheels; change of tyre load from trim.
    public TQuad Force;
    public TQuad Tyre;
}
