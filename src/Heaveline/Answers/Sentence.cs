namespace Heaveline.Answers;

/// <summary>One thing that an answer says. Whoever shows it, or leaves it out, knows it by its id and never by its words.</summary>
/// <param name="Id">Name for machines, kebab-case, never changed.</param>
/// <param name="Text">The words.</param>
public sealed record Sentence(string Id, string Text);
