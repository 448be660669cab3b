namespace Heaveline.Studies;

/// <summary>One of the quantities that a choice takes, with commas between where there are several.</summary>
/// <param name="Label">What it is ("length").</param>
/// <param name="Units">Units that a page offers beside it, the usual one first; one blank for a plain number.</param>
public sealed record ChoiceColumn(string Label, params IReadOnlyList<string> Units);
