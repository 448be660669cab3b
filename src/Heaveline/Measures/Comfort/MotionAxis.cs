namespace Heaveline.Measures.Comfort;

/// <summary>An axis of motion. Directions as in ISO 2631-1 figure 1 and ISO 8855: x forward, y to the left, z up.</summary>
public enum MotionAxis
{
    /// <summary>Fore-aft.</summary>
    X,

    /// <summary>Lateral.</summary>
    Y,

    /// <summary>Vertical.</summary>
    Z,

    /// <summary>Rotation about x.</summary>
    Roll,

    /// <summary>Rotation about y.</summary>
    Pitch,

    /// <summary>Rotation about z.</summary>
    Yaw,
}
