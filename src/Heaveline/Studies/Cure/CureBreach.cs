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

    /// <summary>Coils touch before the bump stop is solid, or sooner.</summary>
    Coils,

    /// <summary>A spring comes loose from its seats, or by more.</summary>
    Loose,

    /// <summary>A stop is met sooner in braking, accelerating or cornering, and too soon.</summary>
    FirstStop,

    /// <summary>A wheel leaves the road, or for longer.</summary>
    Lift,

    /// <summary>A stop is pressed, or deeper.</summary>
    Stop,

    /// <summary>The other of hit and settling gets much worse.</summary>
    Spoilt,
}
