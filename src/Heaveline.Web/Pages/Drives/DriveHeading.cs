using Heaveline.Drives;
using Heaveline.Drives.Comparison;
using Heaveline.Files.Drives;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Drives;

/// <summary>The finding of a drive as the headline of its page.</summary>
internal static class DriveHeading
{
    /// <summary>Whether the change worked, else what the drive is good for, in a line.</summary>
    /// <param name="sheet">What was written down.</param>
    /// <param name="answer">What the log says.</param>
    /// <param name="proof">It, held against the drive before the change; null where there is none.</param>
    /// <param name="isFitting">Whether the car is still being fitted.</param>
    public static string Of(DriveSheet sheet, DriveAnswer answer, ProveAnswer? proof, bool isFitting)
    {
        if (proof is not null)
        {
            return $"{sheet.Name}: {Verdict(proof.Main.Result.Verdict)}";
        }

        // The car counts when it is told: a log that bears it is not yet a car.
        var isTold = !isFitting && answer.Identified is { IsBelieved: true };
        var good = answer.Trust.Verdicts.Where(v => v.Level != TrustLevel.None && (v.Use != TrustUse.Car || isTold)).Select(v => v.Use switch
        {
            TrustUse.Events => "single bumps",
            TrustUse.Comfort => "comfort",
            _ => "the car itself",
        }).ToList();
        var later = isTold || answer.IsCarRefused || answer.Trust.For(TrustUse.Car).Level == TrustLevel.None ? ""
            : answer.Asked.Settings.Wheelbase is null ? "; the car itself wants its wheelbase"
            : isFitting ? "; the car itself is being fitted"
            : "";
        var words = good.Count switch
        {
            0 => "good for nothing",
            1 => $"good for {good[0]} alone",
            _ => $"good for {string.Join(", ", good.SkipLast(1))} and {good[^1]}",
        };
        return $"{sheet.Name}: a log {words}{later}";
    }

    private static string Verdict(ComparisonVerdict verdict) => verdict switch
    {
        ComparisonVerdict.Worked => "the change worked",
        ComparisonVerdict.FellLittle => "better, by less than matters",
        ComparisonVerdict.NoDifference => "no difference that matters",
        ComparisonVerdict.RoseLittle => "worse, by less than matters",
        ComparisonVerdict.Worse => "worse than before",
        ComparisonVerdict.SitesDiffer => "the bumps answer the change differently",
        ComparisonVerdict.NotAlike => "not driven like the drive before",
        ComparisonVerdict.TooFew => "too few bumps in common with the drive before",
        _ => "whether the change worked cannot be said yet",
    };
}
