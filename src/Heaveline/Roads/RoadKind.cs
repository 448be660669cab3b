namespace Heaveline.Roads;

/// <summary>What kind of road it is.</summary>
public enum RoadKind
{
    /// <summary>Level.</summary>
    Flat,

    /// <summary>One obstacle or several, each with a beginning and an end.</summary>
    Obstacle,

    /// <summary>Waves.</summary>
    Sine,

    /// <summary>Chance heights of a given spectrum.</summary>
    Random,

    /// <summary>Heights somebody measured.</summary>
    Measured,
}
