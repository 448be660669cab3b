namespace Heaveline.Search;

/// <summary>Why a setup stands on the shortlist.</summary>
internal enum ShortlistReason
{
    /// <summary>It has the least of the first wish in 9 drawn cars of 10.</summary>
    Best,

    /// <summary>Nobody can tell it from the best, and it is the cheapest of those, what surely fits before what may not.</summary>
    CheapestOfBest,

    /// <summary>It is the cheapest that keeps four fifths of what the best gains.</summary>
    Cheapest,

    /// <summary>Nothing gains more with one part changed.</summary>
    OnePart,

    /// <summary>With two.</summary>
    TwoParts,

    /// <summary>With three.</summary>
    ThreeParts,

    /// <summary>It is farthest from the worst of every wish.</summary>
    Knee,

    /// <summary>Its worst use case is the best of all.</summary>
    MostEven,

    /// <summary>It has the least of the hit.</summary>
    LeastHit,

    /// <summary>It has the least vibration at the seats.</summary>
    LeastRide,

    /// <summary>It has the least change of tyre load on random roads.</summary>
    LeastGrip,

    /// <summary>It loses least of the tyre load over obstacles.</summary>
    LeastLoadLost,
}
