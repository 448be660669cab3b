namespace Heaveline.Finding;

/// <summary>What bringing an index up to date took.</summary>
/// <param name="Read">Files that were read, since they are new, changed, or stand on such a file.</param>
/// <param name="Kept">Files that are as they were.</param>
/// <param name="Gone">Files that are no more.</param>
public sealed record IndexUpdate(int Read, int Kept, int Gone);
