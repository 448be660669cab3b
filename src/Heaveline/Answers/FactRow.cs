namespace Heaveline.Answers;

/// <summary>One quantity over several columns (load states, cars, speeds), already in the unit it is shown in.</summary>
/// <param name="Key">Name for machines, kebab-case, never changed.</param>
/// <param name="Label">Name for people.</param>
/// <param name="Unit">Unit as shown, "–" for a plain number.</param>
/// <param name="Format">.NET number format.</param>
/// <param name="Values">One per column; null where it does not exist.</param>
public sealed record FactRow(string Key, string Label, string Unit, string Format, IReadOnlyList<double?> Values);
