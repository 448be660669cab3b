namespace Heaveline.Studies;

/// <summary>A number with its doubt, both in the row's unit.</summary>
/// <param name="Value">The number of the car as stated.</param>
/// <param name="HalfWidth">Two standard deviations; 0 when no doubt is stated or it is not worked out.</param>
public sealed record DoubtedNumber(double Value, double HalfWidth);
