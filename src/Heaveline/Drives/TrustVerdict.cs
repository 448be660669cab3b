namespace Heaveline.Drives;

/// <summary>How far a log bears one use, and why.</summary>
/// <param name="Use">The use.</param>
/// <param name="Level">How far.</param>
/// <param name="Reason">Why, a sentence or two.</param>
public sealed record TrustVerdict(TrustUse Use, TrustLevel Level, string Reason);
