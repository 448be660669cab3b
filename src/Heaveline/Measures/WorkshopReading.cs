namespace Heaveline.Measures;

/// <summary>What a workshop reads off an empty car in two minutes.</summary>
public enum WorkshopReading
{
    /// <summary>Height over the front axle, mean of left and right, against the car as it was weighed, m.</summary>
    FrontHeight,

    /// <summary>The same over the rear axle, m.</summary>
    RearHeight,

    /// <summary>The rear's less the front's, m.</summary>
    RearOverFront,

    /// <summary>How much lower the front stands than when the car was described, m.</summary>
    FrontSinking,

    /// <summary>The same of the rear, m.</summary>
    RearSinking,

    /// <summary>How much more the rear has sunk than the front, m.</summary>
    RearMoreThanFront,

    /// <summary>Swings of the front, pushed down and let go, until a tenth is left.</summary>
    FrontSwings,

    /// <summary>The same of the rear.</summary>
    RearSwings,
}
