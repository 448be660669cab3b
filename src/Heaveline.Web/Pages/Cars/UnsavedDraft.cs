namespace Heaveline.Web.Pages.Cars;

/// <summary>A text of a car file that was never saved, as the reader's browser has kept it.</summary>
/// <param name="Key">Where the browser keeps it.</param>
/// <param name="Stamp">The stamp of the file's content that the text was made from.</param>
/// <param name="Saved">That content.</param>
/// <param name="Text">The text.</param>
/// <param name="From">When it was typed last, by the browser's clock, in words.</param>
/// <param name="Late">What was typed last and the program has not heard of.</param>
public sealed record UnsavedDraft(string Key, string Stamp, string Saved, string Text, string From, IReadOnlyList<LateEntry> Late);
