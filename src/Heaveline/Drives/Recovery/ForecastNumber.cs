namespace Heaveline.Drives.Recovery;

/// <summary>A number of an event before and after a change, computed.</summary>
/// <param name="Key">Its key in the catalogue of measures.</param>
/// <param name="Before">Before, in the unit of the measure, SI.</param>
/// <param name="After">After.</param>
/// <param name="Change">After over before, less one (–).</param>
public sealed record ForecastNumber(string Key, Bracket Before, Bracket After, Bracket Change);
