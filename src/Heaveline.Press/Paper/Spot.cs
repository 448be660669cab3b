namespace Heaveline.Press.Paper;

/// <summary>A place on the sheet, points (1/72 in): x to the right, y down, from the top left corner.</summary>
internal readonly record struct Spot(double X, double Y);
