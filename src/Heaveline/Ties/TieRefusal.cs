namespace Heaveline.Ties;

/// <summary>Why a number is not said.</summary>
public enum TieRefusal
{
    /// <summary>It is said.</summary>
    None,

    /// <summary>The readings are not of this car on this obstacle.</summary>
    Misfit,

    /// <summary>No tie of that axle was read.</summary>
    NoTie,

    /// <summary>No reading came near the bump stop.</summary>
    NoContact,

    /// <summary>Another number of the axle would show the same travels.</summary>
    Traded,

    /// <summary>The readings leave more than half of its doubt.</summary>
    NotLearned,
}
