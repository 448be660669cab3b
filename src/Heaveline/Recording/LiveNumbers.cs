namespace Heaveline.Recording;

/// <summary>Numbers made of a crossing's samples as a record: the questions to its curves, and what becomes of their answers.</summary>
/// <param name="Questions">The questions, in the order of their answers.</param>
/// <param name="Windows">Two lines a question: where its stretch begins and ends, in samples from the first.</param>
/// <param name="Numbers">A line a number.</param>
internal sealed record LiveNumbers(IReadOnlyList<LiveQuestion> Questions, IReadOnlyList<int> Windows, IReadOnlyList<int> Numbers)
{
    /// <summary>The record that the lines are of.</summary>
    public Record Record { get; init; } = new();
}
