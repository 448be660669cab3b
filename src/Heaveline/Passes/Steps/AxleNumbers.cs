using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// What an axle's plain elements are made of, in wheel travel s from trim and its rate: straight lines here, kinks behind. Motion ratios and the
/// trim are folded into the numbers.
/// </summary>
internal struct AxleNumbers<T, TSides>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    // Rate of springs and bar by a wheel's own travel and by the other's, N/m; damping, N s/m.
    public TSides Rate;
    public TSides Cross;
    public TSides Damping;
    public TSides TyreRate;
    public TSides TyreDamping;
    public TSides Unload;

    // Acceleration per force on the wheel itself, and on the other end of a solid axle, 1/kg.
    public TSides PerWheel;
    public TSides AcrossAxle;
}
