namespace Heaveline.Cars;

/// <summary>What a car looks like from its side. It is drawn by it; nothing is computed from it.</summary>
public enum BodyStyle
{
    /// <summary>Two boxes, short behind the rear axle.</summary>
    Hatchback,

    /// <summary>Three boxes: the luggage under a lid of its own.</summary>
    Saloon,

    /// <summary>Two boxes, long behind the rear axle.</summary>
    Estate,

    /// <summary>One tall box, closed behind the front seats.</summary>
    Van,

    /// <summary>A cab with an open bed behind it.</summary>
    PickUp,

    /// <summary>High and upright, far above the ground.</summary>
    OffRoader,

    /// <summary>Small, low and open.</summary>
    KitCar,
}
