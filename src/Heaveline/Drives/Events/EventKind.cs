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

    /// <summary>The body rolls about as much as it pitches: one side of the car was lifted.</summary>
    OneSide,

    /// <summary>The brakes or the engine moved the body.</summary>
    Braking,
}
