namespace Heaveline.Drives.Planning;

/// <summary>Which motion of the body planks are to excite almost alone.</summary>
public enum PlankGoal
{
    /// <summary>The first body mode, by the name of what swings in it.</summary>
    First,

    /// <summary>The second body mode.</summary>
    Second,

    /// <summary>Pitch about the centre of gravity, no heave.</summary>
    Pitch,
}
