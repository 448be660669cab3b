namespace Heaveline.Recording;

/// <summary>What a sample more does to the answers of two questions side by side, one in each place of a pair.</summary>
/// <param name="Record">The lines. Road 0 is the newest sample of each, road 1 the one so many before it that the question says.</param>
/// <param name="States">
/// Lines of the state, each before a sample and after it: number of the sample, the three samples before the newest, answers.
/// </param>
/// <param name="Reach">How many samples the newest is ahead of the one that is taken up.</param>
/// <param name="Begin">What the answers begin with.</param>
internal sealed record FoldRecord(Record Record, IReadOnlyList<(int Now, int Next)> States, int Reach, IReadOnlyList<double> Begin)
{
    /// <summary>Where the answers stand in the state.</summary>
    public const int Answers = 4;

    /// <summary>Its plan: what the answers do not need is left out.</summary>
    public RecordPlan Plan => new(new StepRecord(Record, States, [.. States.Skip(Answers).Select(state => state.Next)]));
}
