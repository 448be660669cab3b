namespace Heaveline.Elements;

/// <summary>A corner of a piecewise straight law.</summary>
/// <param name="At">Where the slope changes, m or m/s.</param>
/// <param name="Bend">By how much.</param>
internal readonly record struct Hinge(double At, double Bend);
