namespace Heaveline.Studies;

/// <summary>What a worked sheet gives for one key of a car file.</summary>
/// <param name="Key">What it is, kebab-case, never changed ("rate").</param>
/// <param name="Text">The value with its doubt, as a car file takes it.</param>
public sealed record SheetValue(string Key, string Text);
