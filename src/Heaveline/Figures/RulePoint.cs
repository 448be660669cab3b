namespace Heaveline.Figures;

/// <summary>Where a car stands on the map of a rule under one load.</summary>
/// <param name="Load">The load.</param>
/// <param name="Value">The car's value of what the rule turns.</param>
/// <param name="Low">Lower end of its doubt; null where none is known.</param>
/// <param name="High">Upper end of its doubt.</param>
/// <param name="IsMapped">Whether the map is of this load; another load has another map.</param>
public sealed record RulePoint(string Load, double Value, double? Low, double? High, bool IsMapped);
