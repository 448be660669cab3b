namespace Heaveline.Finding;

/// <summary>A number of a car of the garage, under one of its loads.</summary>
/// <param name="Load">The load's name.</param>
/// <param name="Key">Key of the measure.</param>
/// <param name="Value">SI.</param>
public sealed record IndexedNumber(string Load, string Key, double Value);
