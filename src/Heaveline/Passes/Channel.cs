namespace Heaveline.Passes;

/// <summary>
/// Where each quantity stands in a recorded sample of a pass. What is asked for most comes first: a record of its first few numbers is a shorter
/// record of the same kind.
/// </summary>
internal static class Channel
{
    public const int Heave = 0;
    public const int Pitch = 1;
    public const int Roll = 2;
    public const int Wheel = 3;
    public const int Flow = 7;
    public const int Accelerations = 9;
    public const int Tyre = 18;
    public const int Rates = 22;
    public const int Force = 31;
    public const int Count = 35;

    /// <summary>Length of a record of the positions alone.</summary>
    public const int Motion = Accelerations;

    /// <summary>Length of a record of the positions and the body's accelerations.</summary>
    public const int BodyAccelerations = Accelerations + Wheel;

    /// <summary>Length of a record of the positions, accelerations and tyre loads.</summary>
    public const int TyreLoads = Rates;
}
