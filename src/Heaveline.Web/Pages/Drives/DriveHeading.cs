using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Drives;

/// <summary>The finding of a drive as the headline of its page.</summary>
internal static class DriveHeading
{
    /// <summary>What the drive is good for, in a line.</summary>
    /// <param name="sheet">What was written down.</param>
    /// <param name="answer">What the log says.</param>
    public static string Of(DriveSheet sheet, DriveAnswer answer)
    {
        var good = answer.Trust.Verdicts.Where(v => v.Level != TrustLevel.None).Select(v => v.Use switch
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
}
