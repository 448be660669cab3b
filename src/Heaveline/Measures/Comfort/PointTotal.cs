namespace Heaveline.Measures.Comfort;

/// <summary>The vibration total value of one point of a seated person; the rotations of the seat count as a point of their own.</summary>
/// <param name="Point">Where.</param>
/// <param name="Rotation">Whether it is the seat's rotations.</param>
/// <param name="Value">a_v = √(Σ k²a_w²), m/s².</param>
public readonly record struct PointTotal(MeasuringPoint Point, bool Rotation, double Value);
