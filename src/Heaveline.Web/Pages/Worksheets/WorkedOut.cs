namespace Heaveline.Web.Pages.Worksheets;

/// <summary>A value that a worksheet gave.</summary>
/// <param name="Text">The value with its doubt, as a file takes it.</param>
/// <param name="From">What it was worked out from, in words.</param>
public sealed record WorkedOut(string Text, string From);
