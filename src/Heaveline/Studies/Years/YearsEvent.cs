namespace Heaveline.Studies;

/// <summary>What years bring upon a car.</summary>
public enum YearsEvent
{
    /// <summary>The rear is the softer end, by the springs alone.</summary>
    SofterRear,

    /// <summary>It stands on a bump stop.</summary>
    StandsOnStop,

    /// <summary>A bump stop is touched over the road that was asked for.</summary>
    TouchesStop,

    /// <summary>The dipped beam points above its range.</summary>
    HighBeam,

    /// <summary>An axle is damped less than is common.</summary>
    WeakDamping,
}
