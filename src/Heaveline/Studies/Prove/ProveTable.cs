using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The numbers of a comparison: over all bumps, and over each.</summary>
public static class ProveTable
{
    /// <summary>How a probability is printed: "&lt; 0.001" where three decimals show nothing of it.</summary>
    internal const string ProbabilityFormat = "<F3";

    private const string Page = "guide/did-the-change-work.md";

    private static readonly Measure<(BeforeAfter Result, SiteComparison? Site)>[] All =
    [
        Of("prove-before", "passes before", In.Plain, 0, c => c.Site?.Before ?? c.Result.Before,
            "Passes of the drive before the change that count: over bumps that both drives crossed, at speeds of both."),
        Of("prove-after", "passes after", In.Plain, 0, c => c.Site?.After ?? c.Result.After, "Likewise of the drive after it."),
        Of("prove-slowest", "slowest", In.KilometresPerHour, 1, c => Speed(c, Math.Min), "Slowest of the passes that count."),
        Of("prove-fastest", "fastest pass", In.KilometresPerHour, 1, c => Speed(c, Math.Max), "Fastest of the passes that count."),
        Of("prove-change", "change", In.Percent, 1, c => Effect(c)?.Value ?? double.NaN,
            "After over before less one, speed taken out: e^b − 1, b the coefficient of the state in an analysis of covariance of the logarithms."),
        Of("prove-low", "lower end", In.Percent, 1, c => Effect(c)?.Low ?? double.NaN,
            "Lower end of its interval by Student's t: 90 %, 95 % at each of two looks; sites found apart have wider ones.") with
        {
            Name = "lower end of the change",
        },
        Of("prove-high", "upper end", In.Percent, 1, c => Effect(c)?.High ?? double.NaN, "Upper end of its interval.") with
        {
            Name = "upper end of the change",
        },
        Of("prove-probability", "how often by chance (p)", In.Plain, 3, c => Effect(c)?.Probability ?? double.NaN,
            "How often passes that scatter so would differ by as much or more where nothing was changed.") with
        {
            Format = ProbabilityFormat,
        },
        Of("prove-scatter", "one pass scatters by", In.Percent, 1, c => c.Site?.Scatter ?? c.Result.Scatter,
            "Standard deviation of a pass's logarithm about the fit; over several bumps that of equal passes which would tell as much."),
        Of("prove-power", "finds what matters", In.Percent, 0, c => c.Site is null ? c.Result.Power : double.NaN,
            "Share of pairs of drives as these that would find a change of the size that matters."),
        Of("prove-needed", "passes needed", In.Plain, 0, c => c.Site is null ? c.Result.PassesNeeded ?? double.NaN : double.NaN,
            "Passes in each drive that find a change of the size that matters four times of five."),
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    /// <summary>The table.</summary>
    /// <param name="proved">What was compared.</param>
    public static FactTable Of(ProvedNumber proved)
    {
        ArgumentNullException.ThrowIfNull(proved);
        var result = proved.Result;
        (BeforeAfter, SiteComparison?)[] columns = result.Sites.Length == 1
            ? [(result, null)]
            : [(result, null), .. result.Sites.Select(s => (result, (SiteComparison?)s))];
        string[] names = result.Sites.Length == 1 ? [result.Sites[0].Site] : ["all", .. result.Sites.Select(s => s.Site)];
        return new FactTable(proved.Title, names).Add(All, columns);
    }

    private static EffectInterval? Effect((BeforeAfter Result, SiteComparison? Site) column) =>
        column.Site is null ? column.Result.Pooled : column.Site.Effect;

    private static double Speed((BeforeAfter Result, SiteComparison? Site) column, Func<double, double, double> choose) =>
        column.Result.Counted.Where(p => column.Site is null || p.Site == column.Site.Site).Select(p => p.Speed).DefaultIfEmpty(double.NaN)
            .Aggregate(choose);

    private static Measure<(BeforeAfter Result, SiteComparison? Site)> Of(
        string key, string label, ShownUnit unit, int digits, Func<(BeforeAfter Result, SiteComparison? Site), double> of, string says) =>
        new(key, label, unit, digits, of, says) { Page = Page };
}
