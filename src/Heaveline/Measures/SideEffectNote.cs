namespace Heaveline.Measures;

/// <summary>What was taken for granted in the side effects, or left out of them.</summary>
/// <param name="Id">What it is about, kebab-case, never changed ("no-brakes").</param>
/// <param name="Text">The words, one sentence.</param>
public sealed record SideEffectNote(string Id, string Text);
