namespace Heaveline.Drives;

/// <summary>Room to work in while a sensor is brought to a grid, used again and again by one core.</summary>
/// <param name="Columns">Values of its columns, shape (columns, n).</param>
/// <param name="Shares">Where on its line each instant lies, 0 to 1, shape (n).</param>
/// <param name="Lines">The lines: the sample that each begins with, and the first instant that lies on it no more.</param>
internal sealed record EvenRoom(double[][] Columns, double[] Shares, List<(int Sample, int End)> Lines);
