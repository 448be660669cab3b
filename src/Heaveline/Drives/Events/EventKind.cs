namespace Heaveline.Drives.Events;

/// <summary>What a bump of a drive looks like from inside the car.</summary>
public enum EventKind
{
    /// <summary>A rise that the wheels climb and leave: a hump, a table, a bump.</summary>
    Hump,

    /// <summary>A rise or a hollow shorter than half a metre: a plank, a joint, an edge.</summary>
    SharpEdge,

    /// <summary>A hollow.</summary>
    Dip,

    /// <summary>The body rolls the same way at every pass, as one does whose wheels of one side alone meet the bump.</summary>
    OneSide,

    /// <summary>The brakes or the engine moved the body.</summary>
    Braking,
}
