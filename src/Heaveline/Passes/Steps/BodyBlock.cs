using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// The body of the cars side by side: 1/M, the inverse of [I_yy −P; −P I_xx], gravity's arms M·g·h, and where it is and how it moves about trim.
/// </summary>
internal struct BodyBlock<T>
    where T : unmanaged, ILane<T>
{
    public T PerMass;
    public T PitchPerPitch;
    public T RollPerRoll;
    public T PitchPerRoll;
    public T PitchGravity;
    public T RollGravity;
    public T Z;
    public T Theta;
    public T Phi;
    public T ZRate;
    public T ThetaRate;
    public T PhiRate;
}
