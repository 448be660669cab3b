namespace Heaveline.Studies;

/// <summary>What a change does that no cure may do.</summary>
public enum CureBreach
{
    /// <summary>Nothing of the kind.</summary>
    None,

    /// <summary>There is no such car, it cannot stand, or it does not get across.</summary>
    NoCrossing,

    /// <summary>An axle's damping ratio leaves what is common.</summary>
    Damping,

    /// <summary>A wheel leaves the road, or for longer.</summary>
    Lift,

    /// <summary>A stop is pressed, or deeper.</summary>
    Stop,

    /// <summary>The other of hit and settling gets much worse.</summary>
    Spoilt,
}
