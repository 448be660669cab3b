using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Identification;

namespace Heaveline.Studies;

/// <summary>What changed in the car, in words.</summary>
internal static class ChangeWords
{
    /// <summary>The sentences.</summary>
    public static IReadOnlyList<Sentence> Of(CarFromDrive? before, CarFromDrive? after, CarChange? change)
    {
        if (change is { Numbers.IsEmpty: false })
        {
            var told = change.Numbers.Where(n => n.IsTold).ToList();
            return
            [
                new("what-changed", told.Count == 0
                    ? "In the car that moves like the drives no number changed beyond its interval."
                    : "In the car that moves like the drives: "
                        + $"{string.Join("; ", told.Select(n => $"{DriveCarTable.Of(n.Number).Name} {ProveWords.Changed(n.Effect)}"))}"
                        + (told.Count < change.Numbers.Length ? "; nothing else changed beyond its interval." : ".")),
                new(
                    "what-changed-of",
                    "These are the linear cars that move most like each drive, in its motion: no values of springs and dampers in a car file."),
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
