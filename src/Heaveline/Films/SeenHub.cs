namespace Heaveline.Films;

/// <summary>A wheel hub as one frame shows it.</summary>
/// <param name="X">To the right, px.</param>
/// <param name="Y">Down, px.</param>
/// <param name="Doubt">Standard deviation of each of both from frame to frame, px.</param>
public readonly record struct SeenHub(double X, double Y, double Doubt);
