using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// Where an axle's wheels are and what acts on them, about trim: the beginning of its block. Places by their negatives, as they are used.
/// </summary>
internal struct AxleState<T>
    where T : unmanaged, ILane<T>
{
    public T NegX;
    public T NegYL;
    public T NegYR;

    // Heights and rates of the wheels.
    public T UL;
    public T UR;
    public T WL;
    public T WR;

    // The part of the suspension force that the step itself does not work out: a constant of the car, and what the further elements add to it.
    public T StartL;
    public T StartR;

    // Suspension force and tyre load, changes from trim.
    public T FL;
    public T FR;
    public T TyreL;
    public T TyreR;
}
