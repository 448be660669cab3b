namespace Heaveline.Studies;

/// <summary>What is read off a fitted car, empty.</summary>
public enum ToleranceReading
{
    /// <summary>Height over the front axle, mean of left and right, against the car as it was weighed, m.</summary>
    Front,

    /// <summary>The same over the rear axle.</summary>
    Rear,

    /// <summary>The rear's less the front's.</summary>
    Rake,

    /// <summary>Swings of the front, pushed down and let go, until a tenth is left.</summary>
    FrontSwings,

    /// <summary>The same of the rear.</summary>
    RearSwings,
}
