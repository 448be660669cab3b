namespace Heaveline.Parts;

/// <summary>Whether a part, as it is set, fits a place of a car by itself.</summary>
/// <param name="Option">The part.</param>
/// <param name="Fitted">The car with it; null where it does not fit.</param>
/// <param name="Misfits">Every reason why it does not.</param>
public sealed record OptionFit(PartOption Option, Fitted? Fitted, IReadOnlyList<Misfit> Misfits);
