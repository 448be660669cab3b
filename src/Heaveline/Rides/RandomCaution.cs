namespace Heaveline.Rides;

/// <summary>Why a response to a random road must be doubted.</summary>
/// <param name="Id">What kind of reason, kebab-case, never changed ("lift-off"): the same at other speeds.</param>
/// <param name="Text">The reason with its numbers, one sentence or two.</param>
public sealed record RandomCaution(string Id, string Text);
