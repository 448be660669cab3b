namespace Heaveline.Recording;

/// <summary>One step of a car's run as a record: what it reads, what it records of the moment, and the state a step on.</summary>
/// <param name="Record">The lines.</param>
/// <param name="States">The state: the line that reads it, and the line that is it a step on; at rest all are zero.</param>
/// <param name="Sample">What a recorded sample holds, in the order of <see cref="Passes.Channel"/>.</param>
/// <param name="Given">The pairs given from outside for the car recorded; the first is the step, whatever its length.</param>
internal sealed record StepRecord(
    Record Record,
    IReadOnlyList<(int Now, int Next)> States,
    IReadOnlyList<int> Sample,
    IReadOnlyList<(double Front, double Rear)> Given)
{
    /// <summary>Pairs of the road at a step: heights left and right, then their rates.</summary>
    public const int RoadPairs = 4;
}
