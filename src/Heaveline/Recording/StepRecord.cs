namespace Heaveline.Recording;

/// <summary>One step of a car's run as a record: what it reads, what it records of the moment, and the state a step on.</summary>
/// <param name="Record">The lines; what is given to it stands as <see cref="LiveGiven"/> says.</param>
/// <param name="States">The state: the line that reads it, and the line that is it a step on; at rest all are zero.</param>
/// <param name="Sample">What is recorded of the moment: of the stepper's record in the order of <see cref="Passes.Channel"/>.</param>
internal sealed record StepRecord(Record Record, IReadOnlyList<(int Now, int Next)> States, IReadOnlyList<int> Sample)
{
    /// <summary>Pairs of the road at a step: heights left and right, then their rates.</summary>
    public const int RoadPairs = 4;

    /// <summary>
    /// The same step with what a page draws of the moment, as <see cref="DrawnNumbers"/> says; of lines through which fluid flows the gauge pressures
    /// of the four displacers follow, Pa, which must stay above zero.
    /// </summary>
    public StepRecord Drawn => this with { Sample = Draws };

    /// <summary>The same with what else is read off the moment behind that.</summary>
    public StepRecord DrawnAndRead => this with { Sample = [.. Draws, .. Signals] };

    /// <summary>Lines of that.</summary>
    public IReadOnlyList<int> Draws { get; init; } = [];

    /// <summary>Lines of what else is read off the moment.</summary>
    public IReadOnlyList<int> Signals { get; init; } = [];
}
