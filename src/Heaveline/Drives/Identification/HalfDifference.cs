namespace Heaveline.Drives.Identification;

/// <summary>What a number is over the harder half of a drive's windows, over what it is over the gentler half.</summary>
/// <param name="Number">Which number.</param>
/// <param name="Ratio">Hard over gentle.</param>
/// <param name="Low">Lower end of its 90 % interval.</param>
/// <param name="High">Upper end of its 90 % interval.</param>
/// <param name="IsBeyondChance">
/// Whether it differs from 1 by more than chance would make any of the six differ in one drive of ten.
/// </param>
public sealed record HalfDifference(CarNumber Number, double Ratio, double Low, double High, bool IsBeyondChance);
