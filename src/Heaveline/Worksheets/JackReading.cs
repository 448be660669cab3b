using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>One stop of a wheel that a jack on a scale raises or lowers.</summary>
/// <param name="Gap">From the wheel's centre up to the edge of the wing, m: it shrinks as the suspension is pressed together.</param>
/// <param name="Force">What the scale shows, N.</param>
/// <param name="IsLowering">Whether the jack came down to this stop; else it went up to it.</param>
public sealed record JackReading(Amount<Length> Gap, Amount<Force> Force, bool IsLowering);
