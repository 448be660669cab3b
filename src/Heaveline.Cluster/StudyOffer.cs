namespace Heaveline.Cluster;

/// <summary>A study, for a machine that would help with it.</summary>
/// <param name="Refusal">Why it may not; blank where it may.</param>
/// <param name="Texts">The question and the texts of its files.</param>
/// <param name="Hash">What the study is known by.</param>
/// <param name="Piece">A piece to do first, whose answer is known; empty where none is yet: ask again.</param>
[GenerateSerializer, Immutable]
public sealed record StudyOffer(
    [property: Id(0)] string Refusal, [property: Id(1)] byte[] Texts, [property: Id(2)] string Hash, [property: Id(3)] byte[] Piece);
