namespace Heaveline.Causes;

/// <summary>Why no road test of a cause is planned.</summary>
internal enum NoTestReason
{
    /// <summary>Another cause that the same loads move makes more of the change.</summary>
    OthersMore,

    /// <summary>The loads move the cause too little to be seen.</summary>
    NotEnough,

    /// <summary>What the cause makes of the change cannot be computed apart from the rest.</summary>
    NotParted,

    /// <summary>Under both loads there is room to the stops at rest, but no speed keeps the pass off them and on the ground.</summary>
    NoSafeSpeed,

    /// <summary>Under a load the vehicle stands too near to a stop already.</summary>
    StandsAtStop,

    /// <summary>The vehicle cannot stand under a load.</summary>
    CannotStand,

    /// <summary>There is no place for a load.</summary>
    NoPlace,

    /// <summary>The load names nobody who drives.</summary>
    NoDriver,
}
