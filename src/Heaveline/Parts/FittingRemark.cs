namespace Heaveline.Parts;

/// <summary>What must be said of a part in its place.</summary>
/// <param name="Place">The place.</param>
/// <param name="Id">Which remark it is, for who wants to know ("damper-gas").</param>
/// <param name="Text">The sentence.</param>
public sealed record FittingRemark(PartPlace Place, string Id, string Text);
