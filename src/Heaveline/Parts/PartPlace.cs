namespace Heaveline.Parts;

/// <summary>Where a part goes.</summary>
public enum PartPlace
{
    /// <summary>The front springs.</summary>
    FrontSpring,

    /// <summary>The rear springs.</summary>
    RearSpring,

    /// <summary>The front dampers.</summary>
    FrontDamper,

    /// <summary>The rear dampers.</summary>
    RearDamper,

    /// <summary>The front anti-roll bar.</summary>
    FrontBar,

    /// <summary>The rear anti-roll bar.</summary>
    RearBar,

    /// <summary>The front bump stops.</summary>
    FrontStop,

    /// <summary>The rear bump stops.</summary>
    RearStop,

    /// <summary>The front tyres.</summary>
    FrontTyre,

    /// <summary>The rear tyres.</summary>
    RearTyre,

    /// <summary>The interconnection of front and rear.</summary>
    Link,
}
