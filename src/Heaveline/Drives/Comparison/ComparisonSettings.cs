using Heaveline.Quantities;

namespace Heaveline.Drives.Comparison;

/// <summary>How before and after are compared.</summary>
public sealed record ComparisonSettings
{
    /// <summary>The least share of change that matters: 0.1 is ten per cent. 0.01 to 0.5.</summary>
    public double Matters { get; init => field = Checked.Within(value, 0.01, 0.5, "Say what matters as 1 % to 50 %."); } = 0.1;

    /// <summary>
    /// How often the passes are looked at and judged: 1, or 2 where passes are added after a first look. At each of two looks the intervals are
    /// of 95 %, so that both together raise a false alarm in at most 10 of 100 comparisons (Bonferroni). 1 to 2.
    /// </summary>
    public int Looks { get; init => field = (int)Checked.Within(value, 1, 2, "Judge once, or twice."); } = 1;

    /// <summary>The least passes in each state that are judged. A proposal of this program.</summary>
    public const int LeastPasses = 4;

    /// <summary>From so many passes in each state on, the number may bend with speed. A proposal of this program.</summary>
    public const int BentFrom = 8;

    /// <summary>From so many where speeds lie far apart: there a straight line holds no longer. A proposal of this program.</summary>
    public const int BentFarFrom = 5;

    /// <summary>Far: the logarithm of the fastest speed over the slowest. A proposal of this program.</summary>
    public const double Far = 0.35;

    /// <summary>
    /// The share of speed by which the speeds that both drives have are widened at least; more where speeds scatter more, by two standard deviations
    /// of the passes of a drive. A proposal of this program, tried on planted drives.
    /// </summary>
    public const double LeastMargin = 0.05;

    /// <summary>And at most. A proposal of this program, tried on planted drives.</summary>
    public const double MostMargin = 0.12;

    /// <summary>Below this probability sites are held to answer the change differently. Common practice, no source.</summary>
    public const double ApartBelow = 0.1;

    /// <summary>
    /// Where sites are held apart, the share of the false alarms allowed that their own verdicts take up together: they come on top of the verdict
    /// over all sites. Tried on planted drives.
    /// </summary>
    public const double ApartShare = 0.2;

    /// <summary>Chance of a verdict that passes still needed are reckoned for.</summary>
    public const double WantedPower = 0.8;

    /// <summary>Share of cases in which an interval holds the truth.</summary>
    public double Confidence => 1.0 - (0.1 / Looks);
}
