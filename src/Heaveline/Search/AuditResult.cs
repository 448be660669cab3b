namespace Heaveline.Search;

/// <summary>What came of driving setups that the search had left out.</summary>
/// <param name="AtRandom">How many were drawn from all that were left out.</param>
/// <param name="Nearest">How many were drawn from the nearest of these.</param>
/// <param name="Missed">How many of both belonged on the front in the last look.</param>
/// <param name="FoundBefore">How many earlier looks had found, after each of which the search went on with a wider margin.</param>
internal sealed record AuditResult(int AtRandom, int Nearest, int Missed, int FoundBefore)
{
    /// <summary>Below which share of what was left out such setups are, with 95 % confidence, where none of the random ones was one: 3/n.</summary>
    public double ShareBelow => AtRandom == 0 ? double.NaN : Math.Min(1.0, 3.0 / AtRandom);
}
