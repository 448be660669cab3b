namespace Heaveline.Passes.Exact;

/// <summary>What a tyre does on the road, with t its compression from trim and N its static load.</summary>
internal enum ExactContact
{
    /// <summary>It presses: load N + k·t + c·ṫ.</summary>
    Pushing,

    /// <summary>It touches, but its damping would pull: no load (k·t above −N, N + k·t + c·ṫ not above 0).</summary>
    Slack,

    /// <summary>It is clear of the road: no load (k·t at or below −N).</summary>
    Clear,
}
