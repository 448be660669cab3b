namespace Heaveline.Web.Pages.Worksheets;

/// <summary>What a worksheet knows for another field of the car than the one that it stands beside.</summary>
/// <param name="Label">The field in words.</param>
/// <param name="Path">The keys that lead to it in the car file.</param>
/// <param name="Text">The value, as a file takes it.</param>
public sealed record WorkedField(string Label, IReadOnlyList<string> Path, string Text);
