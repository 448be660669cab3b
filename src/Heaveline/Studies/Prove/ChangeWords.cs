using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Identification;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What changed in the car, in words.</summary>
internal static class ChangeWords
{
    /// <summary>The sentences.</summary>
    /// <param name="before">The car of the drive before; null: its log does not bear one.</param>
    /// <param name="after">That of the drive after.</param>
    /// <param name="change">What changed; null where either is not known.</param>
    /// <param name="confidence">Share of cases in which an interval of the table holds the truth.</param>
    public static IReadOnlyList<Sentence> Of(CarFromDrive? before, CarFromDrive? after, CarChange? change, double confidence)
    {
        if (change is { Numbers.IsEmpty: false })
        {
            var told = change.Numbers.Where(n => n.IsTold).ToList();
            return
            [
                new("what-changed", told.Count == 0
                    ? Text($"In the car that moves like the drives no number changed by more than chance among {change.Numbers.Length}.")
                    : "In the car that moves like the drives: "
                        + $"{string.Join("; ", told.Select(n => $"{DriveCarTable.Of(n.Number).Name} {ProveWords.Changed(n.Effect)}"))}"
                        + (told.Count < change.Numbers.Length
                            ? Text($"; nothing else changed by more than chance among {change.Numbers.Length} numbers.")
                            : ".")),
                new(
                    "what-changed-of",
                    "These are the linear cars that move most like each drive, in its motion: no values of springs and dampers in a car file. "
                        + $"The table's intervals are of {ProveWords.Percent(confidence, 0)} each; what is named here allows for their number."),
            ];
        }

        string[] why =
        [
            .. Why(before, "before"), .. Why(after, "after"),
        ];
        return [new(
            "what-changed",
            $"What changed in the car is not told: {(why.Length > 0 ? string.Join(" ", why) : "no number is said of both drives.")}")];
    }

    private static IEnumerable<string> Why(CarFromDrive? car, string name) => car is null
        ? [$"the log {name} does not bear a car."]
        : car.IsBelieved ? [] : car.Refusals.Take(1).Select(r => $"of the drive {name}: {DriveCarWords.Together(r)}");
}
