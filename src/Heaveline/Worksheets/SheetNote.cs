namespace Heaveline.Worksheets;

/// <summary>What a worked sheet says about itself.</summary>
/// <param name="Id">What it is about, kebab-case, never changed ("one-round").</param>
/// <param name="Text">The words, one sentence or two.</param>
public sealed record SheetNote(string Id, string Text);
