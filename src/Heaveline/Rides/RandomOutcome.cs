namespace Heaveline.Rides;

/// <summary>How a random response ended.</summary>
public enum RandomOutcome
{
    /// <summary>Nothing bends in this car, or it was asked for small motions: one solution.</summary>
    Linear,

    /// <summary>The equivalent linear car settled.</summary>
    Converged,

    /// <summary>The equivalent linear car did not settle: the numbers are those of the last pass and of no use.</summary>
    NotConverged,

    /// <summary>The sum over frequencies did not reach its tolerance with the most frequencies: see the stated error.</summary>
    Coarse,
}
