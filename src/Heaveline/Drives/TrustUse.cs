namespace Heaveline.Drives;

/// <summary>What a log may be used for.</summary>
public enum TrustUse
{
    /// <summary>Seeing single bumps: how the body hits and settles.</summary>
    Events,

    /// <summary>Weighing vibration by its effect on people.</summary>
    Comfort,

    /// <summary>Finding the car itself: its frequencies and damping.</summary>
    Car,
}
