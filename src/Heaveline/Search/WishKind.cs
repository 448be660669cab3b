namespace Heaveline.Search;

/// <summary>What a wish is of: a number to be small, compared with the car as it is.</summary>
internal enum WishKind
{
    /// <summary>Pitch in the first second after the rear wheels have left, mean of the use cases with their weights.</summary>
    Settling,

    /// <summary>Peak pitch acceleration of the hit, the same way.</summary>
    Hit,

    /// <summary>Vertical acceleration at the seats on random roads, weighted, the same way.</summary>
    Ride,

    /// <summary>Root mean square change of the tyre load over static on random roads, at the worst wheel, the same way.</summary>
    Grip,

    /// <summary>What is lost of the least tyre load over obstacles, the same way.</summary>
    LoadLost,

    /// <summary>The settling of that use case in which it is worst.</summary>
    WorstRoad,

    /// <summary>What the parts cost.</summary>
    Money,

    /// <summary>At how many places a part is changed.</summary>
    Parts,
}
