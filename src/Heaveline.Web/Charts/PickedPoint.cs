namespace Heaveline.Web.Charts;

/// <summary>A place that a reader picked on a chart.</summary>
/// <param name="Panel">The panel's number from the top, from 0.</param>
/// <param name="X">Place along x, in the unit of the axis.</param>
/// <param name="Y">Height, in the unit of the axis.</param>
public readonly record struct PickedPoint(int Panel, double X, double Y);
