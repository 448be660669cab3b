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
    public static string Of(DriveSheet sheet, DriveAnswer answer, ProveAnswer? proof)
    {
        if (proof is not null)
        {
            return $"{sheet.Name}: {Verdict(proof.Main.Result.Verdict)}";
        }

        var good = answer.Trust.Verdicts.Where(v => v.Level != TrustLevel.None && !(v.Use == TrustUse.Car && answer.IsCarRefused))
            .Select(v => v.Use switch
        {
            TrustUse.Events => "single bumps",
            TrustUse.Comfort => "comfort",
            _ => "the car itself",
        }).ToList();
        var words = good.Count switch
        {
            0 => "good for nothing",
            1 => $"good for {good[0]} alone",
            _ => $"good for {string.Join(", ", good.SkipLast(1))} and {good[^1]}",
        };
        return $"{sheet.Name}: a log {words}";
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
