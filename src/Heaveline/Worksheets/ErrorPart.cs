namespace Heaveline.Worksheets;

/// <summary>One line of an error budget.</summary>
/// <param name="What">The input in words ("angle").</param>
/// <param name="HalfWidth">Half-width of the result that its doubt makes, SI.</param>
public sealed record ErrorPart(string What, double HalfWidth);
