using Heaveline.Press.Paper;

namespace Heaveline.Press.Plates;

/// <summary>One name to the right of a plot.</summary>
/// <param name="Text">The name.</param>
/// <param name="Stroke">The line it names.</param>
/// <param name="X">Where the line ends, in the unit of the x axis; infinite for a line across the whole plot.</param>
/// <param name="Y">Where the line ends, in the unit of the y axis.</param>
internal readonly record struct EndLabel(string Text, Stroke Stroke, double X, double Y);
