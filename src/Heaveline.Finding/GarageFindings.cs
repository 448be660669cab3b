namespace Heaveline.Finding;

/// <summary>What was found in a garage.</summary>
/// <param name="Files">The files.</param>
/// <param name="Update">What bringing the index up to date took.</param>
/// <param name="Remark">What happened to the index on the way, a sentence; empty for nothing.</param>
public sealed record GarageFindings(IReadOnlyList<FoundFile> Files, IndexUpdate Update, string Remark);
