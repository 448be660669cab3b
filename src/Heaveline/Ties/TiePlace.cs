namespace Heaveline.Ties;

/// <summary>Where a tie's travel was read: at one damper, or at both of an axle that read alike.</summary>
public enum TiePlace
{
    /// <summary>Both front dampers; of unlike ones the farther.</summary>
    Front,

    /// <summary>Both rear dampers; of unlike ones the farther.</summary>
    Rear,

    /// <summary>The front left damper.</summary>
    FrontLeft,

    /// <summary>The front right damper.</summary>
    FrontRight,

    /// <summary>The rear left damper.</summary>
    RearLeft,

    /// <summary>The rear right damper.</summary>
    RearRight,
}
