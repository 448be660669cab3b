using Heaveline.Elements.Forces;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>What joins front and rear on each side: an elastic link (or a line wide open), or a fluid line with its own motion.</summary>
internal struct LinkBlock<T>
    where T : unmanaged, ILane<T>
{
    // Common rate, damping and carried force of the elastic link; gas of a line wide open.
    public T Rate;
    public T Damping;
    public T Carried;
    public T GasPressure;
    public GasLaw<T> Gas;

    // The line: 1/I, 1/R, R; flow at trim.
    public T PerInertance;
    public T PerResistance;
    public T Resistance;
    public T TrimFlowL;
    public T TrimFlowR;

    // Fluid gone from front to rear, its rate, and the acceleration where there is inertance.
    public T FlowL;
    public T FlowR;
    public T FlowRateL;
    public T FlowRateR;
    public T FlowDotL;
    public T FlowDotR;
}
