namespace Heaveline.Drives.Recovery;

/// <summary>What a twin may scale.</summary>
public enum TwinScale
{
    /// <summary>Rate of the front springs.</summary>
    FrontSpring,

    /// <summary>Rate of the rear springs.</summary>
    RearSpring,

    /// <summary>Force of the front dampers.</summary>
    FrontDamper,

    /// <summary>Force of the rear dampers.</summary>
    RearDamper,

    /// <summary>Friction of all wheels.</summary>
    Friction,

    /// <summary>Pitch inertia.</summary>
    PitchInertia,
}
