namespace Heaveline.Films;

/// <summary>A point of the picture: x to the right and y down from the middle of its upper left pixel.</summary>
/// <param name="X">To the right, px.</param>
/// <param name="Y">Down, px.</param>
public readonly record struct PicturePoint(double X, double Y);
