namespace Heaveline.Parts;

/// <summary>What a part is.</summary>
public enum PartSort
{
    /// <summary>A coil spring.</summary>
    Spring,

    /// <summary>A damper.</summary>
    Damper,

    /// <summary>An anti-roll bar.</summary>
    Bar,

    /// <summary>A bump stop.</summary>
    Stop,

    /// <summary>A tyre.</summary>
    Tyre,

    /// <summary>An interconnection.</summary>
    Link,
}
