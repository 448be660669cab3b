using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>A stop found where a measured loop bends.</summary>
/// <param name="Gap">Gap between wheel centre and wing at which the two straight parts meet, m.</param>
/// <param name="Clearance">Wheel travel from the state described to there, m; null when the gap of that state is not known.</param>
/// <param name="Rate">By how much the rate grows past it: the stop's own rate at the wheel, N/m.</param>
public sealed record FoundStop(Amount<Length> Gap, Amount<Length>? Clearance, Amount<Stiffness> Rate);
