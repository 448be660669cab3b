using Heaveline.Drives.Comparison;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives.Comparison;

/// <summary>Many planted pairs of drives, compared: how often a change is found where there is none, and where there is one.</summary>
/// <param name="humps">Where they drive.</param>
/// <param name="bank">Passes for each site and state to draw from.</param>
internal sealed class PlantedComparisons(PlantedHumps humps, int bank)
{
    private readonly List<IReadOnlyList<ComparedPass>> before = [.. Sites.Select(s => humps.Passes(PlantedHumps.Before, s, bank, 1, false))];
    private readonly List<IReadOnlyList<ComparedPass>> same = [.. Sites.Select(s => humps.Passes(PlantedHumps.Before, s, bank, 2, true))];
    private readonly List<IReadOnlyList<ComparedPass>> changed = [.. Sites.Select(s => humps.Passes(PlantedHumps.After, s, bank, 3, true))];

    private static IEnumerable<int> Sites => Enumerable.Range(0, 4);

    /// <summary>The change at each site: ln of after over before, means of the whole bank.</summary>
    public double[] Truth => [.. Sites.Select(s => changed[s].Average(p => Math.Log(p.Value)) - before[s].Average(p => Math.Log(p.Value)))];

    /// <summary>Compares pairs of drives.</summary>
    /// <param name="pairs">How many pairs.</param>
    /// <param name="each">Passes in each state at each site.</param>
    /// <param name="sites">Sites of each pair; one only: each in turn.</param>
    /// <param name="isChanged">Whether the car is changed.</param>
    /// <param name="tilt">By how many standard deviations the drives' speeds are moved apart, half each way.</param>
    /// <param name="settings">How they are compared.</param>
    public Score Of(int pairs, int each, int sites, bool isChanged, double tilt = 0.0, ComparisonSettings? settings = null)
    {
        var score = new Score(pairs);
        for (var pair = 0; pair < pairs; pair++)
        {
            List<ComparedPass> passes = [];
            foreach (var site in sites == 1 ? [pair % 4] : Enumerable.Range(0, sites))
            {
                var seed = SplitMix.At(5UL, (ulong)((((pair * 8) + site) * 2) + (isChanged ? 1 : 0)));
                passes.AddRange(PlantedHumps.Drawn(before[site], each, -tilt, SplitMix.At(seed, 1)));
                passes.AddRange(PlantedHumps.Drawn((isChanged ? changed : same)[site], each, tilt, SplitMix.At(seed, 2)));
            }

            score.Add(BeforeAfter.Of(passes, settings), sites == 1 ? Truth[pair % 4] : Truth.Take(sites).Average());
        }

        return score;
    }

    /// <summary>What came out of many.</summary>
    internal sealed class Score(int pairs)
    {
        private readonly List<double> halves = [];
        private readonly List<double> scatters = [];
        private int said;
        private int fell;
        private int rose;
        private int covered;
        private int apart;

        /// <summary>Share in which a change was said, either way.</summary>
        public double Alarms => (fell + rose) / (double)pairs;

        /// <summary>Share in which a fall was said.</summary>
        public double Falls => fell / (double)pairs;

        /// <summary>Share that was judged at all.</summary>
        public double Judged => said / (double)pairs;

        /// <summary>Share in which sites were held apart.</summary>
        public double Apart => apart / (double)pairs;

        /// <summary>Share of judged ones whose interval over all sites holds the planted change.</summary>
        public double Covered => covered / (double)Math.Max(said, 1);

        /// <summary>Median half-width of the logarithm.</summary>
        public double HalfWidth => Middle.Of([.. halves]);

        /// <summary>Root mean square scatter of one pass.</summary>
        public double Scatter => Math.Sqrt(scatters.Average(s => s * s));

        /// <summary>Takes one in.</summary>
        /// <param name="comparison">The comparison.</param>
        /// <param name="truth">The planted change where it is one.</param>
        public void Add(BeforeAfter comparison, double truth)
        {
            if (comparison.Pooled is not { } effect)
            {
                return;
            }

            said++;
            ComparisonVerdict[] verdicts = comparison.Verdict == ComparisonVerdict.SitesDiffer
                ? [.. comparison.Sites.Select(s => s.Verdict)]
                : [comparison.Verdict];
            fell += verdicts.Any(v => v is ComparisonVerdict.Worked or ComparisonVerdict.FellLittle) ? 1 : 0;
            rose += verdicts.Any(v => v is ComparisonVerdict.Worse or ComparisonVerdict.RoseLittle)
                && !verdicts.Any(v => v is ComparisonVerdict.Worked or ComparisonVerdict.FellLittle) ? 1 : 0;
            apart += comparison.AreApart ? 1 : 0;
            covered += Math.Abs(effect.Log - truth) <= effect.HalfWidth ? 1 : 0;
            halves.Add(effect.HalfWidth);
            scatters.Add(comparison.Scatter);
        }
    }
}
