namespace Heaveline.Files.Cars;

/// <summary>What stands in a car file for a number that was not measured.</summary>
/// <param name="Value">The value with its doubt, as the file holds it.</param>
/// <param name="By">By which rule, and where that is from.</param>
public sealed record SheetEstimate(string Value, string By);
