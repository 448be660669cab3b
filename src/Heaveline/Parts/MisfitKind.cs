namespace Heaveline.Parts;

/// <summary>Why a part does not fit.</summary>
public enum MisfitKind
{
    /// <summary>It is not a part for this place.</summary>
    OtherPlace,

    /// <summary>What stands there says nothing of the seats of a coil spring.</summary>
    NoCoilSeats,

    /// <summary>Its ends are wider or narrower than the seats.</summary>
    SeatDiameter,

    /// <summary>The springs that are there, or a length, are not known, so that packing has nothing to count from.</summary>
    NowhereToPack,

    /// <summary>Its table ends before it carries what stands on it.</summary>
    CannotCarry,

    /// <summary>Its coils touch before the bump stop is solid.</summary>
    CoilsTouch,

    /// <summary>Its wire is stressed beyond what its maker allows.</summary>
    WireStress,

    /// <summary>It comes loose from its seats where the wheels hang.</summary>
    LooseSpring,

    /// <summary>How far the damper moves with its wheel is not described.</summary>
    NoDamperRatio,

    /// <summary>The damper's stroke is shorter than the wheel's travel.</summary>
    ShortStroke,

    /// <summary>A two-wheeler has no bar.</summary>
    NoBar,

    /// <summary>No bump stop is described, so that nobody knows where another one would touch.</summary>
    NoStop,

    /// <summary>It touches as the car stands.</summary>
    StopTouches,

    /// <summary>The tyre would weigh less than nothing is left for.</summary>
    UnsprungMass,

    /// <summary>The interconnection that is there carries a force that another one would not.</summary>
    LinkCarries,
}
