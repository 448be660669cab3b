using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>The drives of a report, from their words.</summary>
internal static class ReportDrives
{
    private const string Two = "the drive before the change and the drive after it, or one whose drive.yaml says which it follows";

    /// <summary>The drive before a change and the one after it: two, or one with the drive that it follows; null: no such two.</summary>
    /// <param name="drives">The drives.</param>
    public static (RecordedDrive Before, RecordedDrive After)? PairOf(IReadOnlyList<RecordedDrive> drives) => drives switch
    {
        [var before, var after] => (before, after),
        [{ Before: { } before } after] => (before, after),
        _ => null,
    };

    /// <summary>How many drives a report is of; a single one counts as two where it follows on another, one that is not there as itself.</summary>
    /// <param name="given">How many were given.</param>
    /// <param name="drives">Those that were found.</param>
    public static int Count(int given, IReadOnlyList<RecordedDrive> drives) => given == 1 && PairOf(drives) is not null ? 2 : given;

    /// <summary>
    /// The drives, their logs unread, in the order that what is written down with them says; where that is not the order in which they were given, a
    /// sentence on it, else blank. What is wrong with their words is objected to.
    /// </summary>
    /// <param name="reader">What was given.</param>
    /// <param name="cars">The cars of the report, by which logs alone were driven.</param>
    public static (IReadOnlyList<RecordedDrive> Drives, string Turned) Of(AskedReader reader, IReadOnlyList<LoadedCar> cars)
    {
        var given = reader.Given.All(ReportStudy.Drives);
        if (given.Count > 2 || given.Distinct(StringComparer.Ordinal).Count() < given.Count)
        {
            reader.Object(
                ReportStudy.Drives.Name,
                given.Count > 2 ? FormattableString.Invariant($"drive: {given.Count} are too many; give {Two}.")
                    : $"The drive {given[0]} is chosen twice; give {Two}.");
            return ([], "");
        }

        var found = reader.Drives(ReportStudy.Drives);
        var turned = "";
        if (found is [{ Before: { } before } after, var second] && before.Path == second.Path)
        {
            found = [second, after];
            turned = $"Turned round: {after.Name} is written down as driven after {second.Name}, so {second.Name} is the drive before the change.";
        }

        RecordedDrive[] drives = [.. found
            .Select((drive, k) => cars.Count == 0 ? drive : DrivenBy(drive, cars[Math.Min(k, cars.Count - 1)]))];
        return (drives, turned);
    }

    /// <summary>Objects to parts without their drives, and to what only speaks of drives that no part is of.</summary>
    /// <param name="reader">What was given.</param>
    /// <param name="parts">The parts.</param>
    /// <param name="drives">The drives that were found.</param>
    /// <param name="isForecast">Whether the change is forecast.</param>
    public static void Check(AskedReader reader, IReadOnlyList<PartKind> parts, IReadOnlyList<RecordedDrive> drives, bool isForecast)
    {
        var given = reader.Given.All(ReportStudy.Drives);
        if (given.Count > 0 && !parts.Any(IsOfDrives))
        {
            reader.Object(ReportStudy.Drives.Name, "drive: no part is of it; choose the part drive or prove too, or leave it out.");
        }

        if (given.Count == 0 && parts.Contains(PartKind.Drive))
        {
            reader.Object(ReportStudy.Parts.Name, "The part drive needs a drive.");
        }

        // What is not there has been objected to.
        var isFound = drives.Count == given.Count;
        var pair = PairOf(drives);
        if (parts.Contains(PartKind.Prove) && isFound && pair is null)
        {
            reader.Object(ReportStudy.Parts.Name, $"The part prove needs two drives: {Two}.");
        }

        if (reader.Given.Of(ReportStudy.Same) is not null && !parts.Contains(PartKind.Prove))
        {
            reader.Object(ReportStudy.Same.Name, "same: it speaks of the part prove; choose that too, or leave it out.");
        }

        if (isForecast && !parts.Contains(PartKind.Prove))
        {
            reader.Object(ReportStudy.Forecast.Name, "forecast: it is held against the drives of the part prove; choose that too, or leave it out.");
        }
        else if (isForecast && isFound && pair is var (before, after))
        {
            if (before.Car is not { } first || after.Car is not { } second || first.Car.Equals(second.Car))
            {
                reader.Object(
                    ReportStudy.Forecast.Name,
                    "forecast: it needs the car of the drive before and the changed car of the drive after; each drive.yaml names its own, "
                    + "logs alone are of the first and the second car.",
                    isUsage: false);
            }
            else if (DriveCautions.IsLoadedOtherwise(before, after))
            {
                reader.Object(
                    ReportStudy.Forecast.Name,
                    $"forecast: not to be judged; the drive before was driven {first.Load.Name}, the drive after {second.Load.Name}, "
                    + "and what the load did is not told from what the change did. Leave it out.",
                    isUsage: false);
            }
        }
    }

    private static bool IsOfDrives(PartKind part) => part is PartKind.Drive or PartKind.Prove;

    private static RecordedDrive DrivenBy(RecordedDrive drive, LoadedCar car) => drive.IsDescribed ? drive : drive with
    {
        Car = car,
        Settings = drive.Settings with { Wheelbase = car.Car.Wheelbase.Si },
    };
}
