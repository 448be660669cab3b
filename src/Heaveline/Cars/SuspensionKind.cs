namespace Heaveline.Cars;

/// <summary>How the two wheels of an axle are joined.</summary>
public enum SuspensionKind
{
    /// <summary>Each wheel moves by itself.</summary>
    Independent,

    /// <summary>One rigid beam carries both wheels: springs, dampers and stops act at their own places along it.</summary>
    SolidAxle,
}
