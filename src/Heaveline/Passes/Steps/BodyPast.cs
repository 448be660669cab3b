using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Accelerations of the body at one step.</summary>
internal struct BodyPast<T>
    where T : unmanaged, ILane<T>
{
    public T Z;
    public T Theta;
    public T Phi;
}
