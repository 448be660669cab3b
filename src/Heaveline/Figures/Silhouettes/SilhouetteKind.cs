namespace Heaveline.Figures.Silhouettes;

/// <summary>What is drawn: a car of one of the body styles, or a motorcycle.</summary>
internal enum SilhouetteKind
{
    /// <summary>Two boxes, short behind.</summary>
    Hatchback,

    /// <summary>Three boxes.</summary>
    Saloon,

    /// <summary>Two boxes, long behind.</summary>
    Estate,

    /// <summary>One tall box.</summary>
    Van,

    /// <summary>A cab and an open bed.</summary>
    PickUp,

    /// <summary>High and upright.</summary>
    OffRoader,

    /// <summary>Low and open.</summary>
    KitCar,

    /// <summary>Two wheels in one plane.</summary>
    Motorcycle,
}
