using System.Collections.Immutable;
using Heaveline.Numerics;
using MathNet.Numerics.Distributions;

namespace Heaveline.Drives.Comparison;

/// <summary>Whether a change worked: one number of every pass before and after it, over bumps that both drives crossed at speeds that meet.</summary>
/// <remarks>
/// Every pass's number enters by its logarithm, so that a change is a share of it. The model, its tests and intervals are those of an analysis of
/// covariance with speed beside it [Draper and Smith, Applied Regression Analysis, ch. 14]; sites share one change. Where an F test of site × change
/// finds them apart and they do not even agree in the sign, each stands by itself, its interval widened by their number (Bonferroni).
/// </remarks>
public sealed record BeforeAfter
{
    private const int Most = 200;

    /// <summary>How it was compared.</summary>
    public required ComparisonSettings Settings { get; init; }

    /// <summary>The passes that count: over sites that both drives crossed, at speeds that meet.</summary>
    public required ImmutableArray<ComparedPass> Counted { get; init; }

    /// <summary>The passes that do not.</summary>
    public required ImmutableArray<ComparedPass> LeftOut { get; init; }

    /// <summary>Sites that both drives crossed.</summary>
    public required ImmutableArray<SiteComparison> Sites { get; init; }

    /// <summary>Sites that one drive alone crossed.</summary>
    public required ImmutableArray<string> CrossedOnce { get; init; }

    /// <summary>The change over all sites together; null where nothing is compared.</summary>
    public EffectInterval? Pooled { get; init; }

    /// <summary>
    /// Probability of sites so far apart where they all answer alike (F test of site × change); null with one site or too few passes.
    /// </summary>
    public double? ApartProbability { get; init; }

    /// <summary>Whether the sites answer the change differently.</summary>
    public bool AreApart => ApartProbability < ComparisonSettings.ApartBelow;

    /// <summary>What is said.</summary>
    public required ComparisonVerdict Verdict { get; init; }

    /// <summary>Standard deviation of one pass's logarithm about the model: 0.07 is 7 %. NaN where nothing is compared.</summary>
    public double Scatter { get; init; } = double.NaN;

    /// <summary>
    /// Chance that passes as these, in each state as many as the drive of fewer has, show a change of the size that matters; NaN where nothing is
    /// compared.
    /// </summary>
    public double Power { get; init; } = double.NaN;

    /// <summary>
    /// Passes in each state that show a change of the size that matters four times of five; null where more than 200 would be needed.
    /// </summary>
    public int? PassesNeeded { get; init; }

    /// <summary>The same did all passes of a drive share no doubt: what they scatter by alone; null where more than 200 would be needed.</summary>
    internal int? PassesByScatter { get; init; }

    /// <summary>
    /// Whether the doubt that all passes of a drive share is what asks for passes: half as many again as the scatter does, or more than can be named.
    /// </summary>
    internal bool IsHeldByShared => Common > 0.0 && (IsBeyondPasses || (PassesByScatter is { } alone && !(PassesNeeded <= 1.5 * alone)));

    /// <summary>
    /// Whether that doubt, while it stays as it is, keeps any number of passes from showing a change of the size that matters four times of five.
    /// </summary>
    internal bool IsBeyondPasses =>
        Normal.CDF(0.0, 1.0, (Math.Log(1.0 + Settings.Matters) / Common) - Normal.InvCDF(0.0, 1.0, 0.5 * (1.0 + Settings.Confidence)))
            < ComparisonSettings.WantedPower;

    /// <summary>Half-width of the 90 % interval of that doubt alone, of the logarithm of the change; 0 for none.</summary>
    internal double SharedHalfWidth => Gaussian.Ninety * Common;

    /// <summary>
    /// Passes more in each state that would settle what cannot be said yet; null where it is said, or where no reasonable number would. Where there
    /// are enough for the size that matters, those that would settle the change as it stands.
    /// </summary>
    public int? MorePasses { get; init; }

    /// <summary>Passes that stand apart from all the others, at most one in twenty comparisons by chance.</summary>
    public ImmutableArray<OddPass> Odd { get; init; } = [];

    /// <summary>Whether the speeds meet, but what speed did cannot be told from what the change did: too few different ones in each drive.</summary>
    public bool IsHiddenInSpeed { get; init; }

    /// <summary>By how much the speed record after is off that before, a share, where that forbids a verdict; null where it does not.</summary>
    public double? RecordsApart { get; init; }

    /// <summary>Passes before that count.</summary>
    public int Before => Counted.Count(p => !p.IsAfter);

    /// <summary>Passes after that count.</summary>
    public int After => Counted.Count(p => p.IsAfter);

    internal ComparisonFit? Fit { get; init; }

    /// <summary>How much each site makes of <see cref="Pooled"/>, adding up to 1; empty where nothing is compared.</summary>
    internal IReadOnlyDictionary<string, double> Shares { get; init; } = new Dictionary<string, double>();

    // Standard deviation of a pass by which as many in each state, equally many and of one speed, would tell the change as surely as these do.
    private double Spread { get; init; }

    // Doubt of the change that more passes do not take away, standard deviation.
    private double Common { get; init; }

    // Coefficients that the passes pay for.
    private int Columns { get; init; }

    /// <summary>Compares passes before and after a change.</summary>
    /// <param name="passes">The passes.</param>
    /// <param name="settings">How; null: as usual.</param>
    public static BeforeAfter Of(IReadOnlyList<ComparedPass> passes, ComparisonSettings? settings = null) => Of(passes, settings, 0.0);

    /// <summary>The same with a doubt that all passes of a drive share.</summary>
    /// <param name="passes">The passes.</param>
    /// <param name="settings">How; null: as usual.</param>
    /// <param name="common">Its standard deviation, of the logarithm of the change.</param>
    internal static BeforeAfter Of(IReadOnlyList<ComparedPass> passes, ComparisonSettings? settings, double common)
    {
        ArgumentNullException.ThrowIfNull(passes);
        settings ??= new ComparisonSettings();
        var both = passes.GroupBy(p => p.Site).Where(g => g.Any(p => p.IsAfter) && g.Any(p => !p.IsAfter)).Select(g => g.Key).ToHashSet();
        List<ComparedPass> met = [.. passes.Where(p => both.Contains(p.Site))];
        var speeds = SpeedMatching.Of(met);
        var counted = met.Where(p => speeds[p.Site].IsAlike && speeds[p.Site].Holds(p.Speed)).GroupBy(p => p.Site)
            .Where(g => g.Any(p => p.IsAfter) && g.Any(p => !p.IsAfter)).SelectMany(g => g).ToHashSet();
        ImmutableArray<ComparedPass> kept = [.. met.Where(counted.Contains)];
        var scatter = kept.IsEmpty ? null : SiteScatter.Of(kept);
        var pooled = kept.IsEmpty ? null : new ComparisonFit(kept, isApart: false, scatter);
        var isEnough = IsEnough(kept);
        var bare = new BeforeAfter
        {
            Settings = settings,
            Counted = kept,
            LeftOut = [.. passes.Where(p => !counted.Contains(p))],
            CrossedOnce = [.. passes.Select(p => p.Site).Distinct().Where(s => !both.Contains(s))],
            Verdict = !IsEnough(met) || (isEnough && kept.Length <= pooled!.Columns) ? ComparisonVerdict.TooFew : ComparisonVerdict.NotAlike,
            IsHiddenInSpeed = isEnough && kept.Length > pooled!.Columns && !pooled.IsDetermined,
            Sites = [.. both
                .Order(Comparer<string>.Create((a, b) => First(met, a) - First(met, b))).Select(site => SiteOf(site, met, counted, speeds))],
        };
        return isEnough && pooled!.IsDetermined ? bare.Judged(pooled, scatter!, common) : bare;
    }

    /// <summary>The same passes without a verdict, since the speed records of the drives are no common measure.</summary>
    /// <param name="apart">Logarithm of the record after over that before.</param>
    internal BeforeAfter Withheld(double apart) => this with
    {
        Shares = new Dictionary<string, double>(),
        Verdict = Verdict == ComparisonVerdict.TooFew ? Verdict : ComparisonVerdict.NotAlike,
        RecordsApart = Math.Exp(apart) - 1.0,
        Pooled = null,
        Fit = null,
        ApartProbability = null,
        Scatter = double.NaN,
        Power = double.NaN,
        PassesNeeded = null,
        PassesByScatter = null,
        MorePasses = null,
        Odd = [],
        Sites =
        [
            .. Sites.Select(s => s with
            {
                Effect = null, Verdict = s.Verdict == ComparisonVerdict.TooFew ? s.Verdict : ComparisonVerdict.NotAlike,
            }),
        ],
    };

    /// <summary>The mean level that is fitted at a site, with its interval; null where the site is not compared.</summary>
    /// <param name="site">The site.</param>
    /// <param name="speed">m/s.</param>
    /// <param name="isAfter">Whether after the change.</param>
    public (double Value, double Low, double High)? Level(string site, double speed, bool isAfter) =>
        Fit is null || !Fit.Holds(site) ? null : Fit.Level(site, speed, isAfter, Settings.Confidence);

    /// <summary>Chance that so many passes in each state, scattering as these, show a change of a size at the level of the verdict.</summary>
    /// <param name="passes">Passes in each state, over all sites together.</param>
    /// <param name="change">The change, a share: 0.1 is ten per cent.</param>
    /// <returns>0 where they leave no scatter to be seen; NaN where nothing is compared.</returns>
    public double PowerAt(int passes, double change) => PowerAt(passes, change, Common);

    /// <summary>The verdict of one interval.</summary>
    internal static ComparisonVerdict Of(EffectInterval effect, double matters)
    {
        var isSmall = effect.Low >= -matters && effect.High <= matters;
        return effect.High < 0.0 ? isSmall ? ComparisonVerdict.FellLittle : ComparisonVerdict.Worked
            : effect.Low > 0.0 ? isSmall ? ComparisonVerdict.RoseLittle : ComparisonVerdict.Worse
            : isSmall ? ComparisonVerdict.NoDifference
            : ComparisonVerdict.CannotSay;
    }

    private static bool IsEnough(IReadOnlyCollection<ComparedPass> passes) =>
        Math.Min(passes.Count(p => p.IsAfter), passes.Count(p => !p.IsAfter)) >= ComparisonSettings.LeastPasses;

    private static int First(List<ComparedPass> passes, string site) => passes.FindIndex(p => p.Site == site);

    private static SiteComparison SiteOf(
        string site, List<ComparedPass> passes, HashSet<ComparedPass> counted, IReadOnlyDictionary<string, SpeedMatch> speeds)
    {
        var here = passes.Where(p => p.Site == site).ToList();
        return new SiteComparison
        {
            Site = site,
            Kind = here[0].Kind,
            Speeds = speeds[site],
            Before = here.Count(p => !p.IsAfter && counted.Contains(p)),
            After = here.Count(p => p.IsAfter && counted.Contains(p)),
            Verdict = speeds[site].IsAlike ? ComparisonVerdict.TooFew : ComparisonVerdict.NotAlike,
        };
    }

    private BeforeAfter Judged(ComparisonFit pooled, IReadOnlyDictionary<string, double> scatter, double common)
    {
        // A site of one pass in a state tells nothing of itself.
        string[] alone = [.. Sites.Where(s => Math.Min(s.Before, s.After) > 1).Select(s => s.Site)];
        List<ComparedPass> rest = [.. Counted.Where(p => alone.Contains(p.Site))];
        var own = rest.Count == 0 ? null : new ComparisonFit(rest, isApart: true, scatter);
        var apart = alone.Length > 1 && own!.IsDetermined ? Apart(new ComparisonFit(rest, isApart: false, scatter), own, alone.Length) : null;
        var areApart = apart < ComparisonSettings.ApartBelow;
        var share = areApart ? 1.0 - (ComparisonSettings.ApartShare * (1.0 - Settings.Confidence) / alone.Length) : Settings.Confidence;
        var sites = Sites.Select(site =>
        {
            if (!alone.Contains(site.Site) || !own!.IsDetermined)
            {
                return site;
            }

            var effect = own.Effect(site.Site, share).With(common);
            return site with { Effect = effect, Scatter = own.ScatterAt(site.Site), Verdict = Of(effect, Settings.Matters) };
        }).ToImmutableArray();
        var plain = pooled.Effect(Counted[0].Site, Settings.Confidence);
        var all = plain.With(common);
        var judged = this with
        {
            Sites = sites,
            Pooled = all,
            ApartProbability = apart,
            Fit = areApart ? own : pooled,
            Shares = pooled.Shares(),
            Columns = pooled.Columns,
            Spread = plain.StandardError / Math.Sqrt((1.0 / Before) + (1.0 / After)),
            Common = common,
            Scatter = pooled.Scatter,
            Verdict = areApart && !sites.All(s => s.Effect is not { } effect || effect.Log * all.Log > 0.0)
                ? ComparisonVerdict.SitesDiffer
                : Of(all, Settings.Matters),
            Odd = OddOf(pooled),
        };
        var needed = judged.Needed(common);
        return judged with
        {
            Power = judged.PowerAt(Math.Min(Before, After), Settings.Matters),
            PassesNeeded = needed,
            PassesByScatter = common > 0.0 ? judged.Needed(0.0) : needed,
            MorePasses = judged.Verdict == ComparisonVerdict.CannotSay ? judged.More(needed, all) : null,
        };
    }

    // Where nothing is left that the sites' own changes account for, by rounding even less, they are as much one as can be.
    private static double? Apart(ComparisonFit pooled, ComparisonFit own, int sites)
    {
        if (!(own.SumOfSquares > 0.0) || double.IsNaN(pooled.SumOfSquares))
        {
            return null;
        }

        var ratio = own.SumOfSquares / own.Freedom / ((pooled.SumOfSquares - own.SumOfSquares) / (sites - 1));
        return ratio > 0.0 && double.IsFinite(ratio) ? FisherSnedecor.CDF(own.Freedom, sites - 1, ratio) : 1.0;
    }

    private double PowerAt(int passes, double change, double common)
    {
        var freedom = (2 * passes) - Columns;
        return double.IsNaN(Scatter) ? double.NaN
            : freedom < 1 ? 0.0
            : Error(passes, common) is > 0.0 and var error ? PowerOf(Math.Log(1.0 + change) / error, freedom) : 1.0;
    }

    private double PowerOf(double effect, int freedom) =>
        StudentPower.Above(effect, freedom, LeastSquares.Student(freedom, Settings.Confidence));

    private int? Needed(double common)
    {
        for (var passes = ComparisonSettings.LeastPasses; passes <= Most; passes++)
        {
            if (PowerAt(passes, Settings.Matters, common) >= ComparisonSettings.WantedPower)
            {
                return passes;
            }
        }

        return null;
    }

    private int? More(int? needed, EffectInterval effect)
    {
        var have = Math.Min(Before, After);
        if (!(needed <= have))
        {
            return needed - have;
        }

        // Enough for the size that matters: the change as it stands lies at an edge. How many would take it off?
        for (var more = 1; have + more <= Most; more++)
        {
            var freedom = (2 * (have + more)) - Columns;
            var half = freedom < 1
                ? double.PositiveInfinity
                : LeastSquares.Student(freedom, Settings.Confidence) * Error(have + more, Common);
            if (Of(effect with { HalfWidth = half }, Settings.Matters) != ComparisonVerdict.CannotSay)
            {
                return more;
            }
        }

        return null;
    }

    // Of the change by so many passes in each state: what they scatter by, their speeds and bumps spread as here, with the doubt that all share.
    private double Error(int passes, double common) => Math.Sqrt((common * common) + (2.0 / passes * Spread * Spread));

    private ImmutableArray<OddPass> OddOf(ComparisonFit fit)
    {
        if (fit.Freedom < 2 || !(fit.Scatter > 0.0))
        {
            return [];
        }

        // Bonferroni over all passes: one false alarm in twenty comparisons.
        var limit = LeastSquares.Student(fit.Freedom - 1, 1.0 - (0.05 / Counted.Length));
        return [.. Counted.Select((p, i) => new OddPass(p, fit.Distance(i))).Where(o => Math.Abs(o.Distance) > limit)];
    }
}
