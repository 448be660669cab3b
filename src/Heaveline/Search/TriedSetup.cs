using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Search;

/// <summary>A setup driven in drawn cars, each against the car as it is in the same draw.</summary>
internal sealed record TriedSetup
{
    /// <summary>Fewer draws say too little of a share: it counts as it was counted, and is told as not sure yet.</summary>
    public const int Few = 60;

    /// <summary>The setup as stated.</summary>
    public required DrivenSetup Stated { get; init; }

    /// <summary>For each wish that is driven for its number in every draw; NaN where it does not get across.</summary>
    public required ImmutableArray<ImmutableArray<double>> Wishes { get; init; }

    /// <summary>Its rows, draw by draw.</summary>
    public required ImmutableArray<SetupRow> Rows { get; init; }

    /// <summary>For each limit in how many draws it held.</summary>
    public required ImmutableArray<int> Held { get; init; }

    /// <summary>
    /// For each limit of how many: the draws, and of one that stands alone also those in which the car as it is does not get across.
    /// </summary>
    public required ImmutableArray<int> Asked { get; init; }

    /// <summary>In how many draws it did nothing that no setup may do.</summary>
    public required int Clean { get; init; }

    /// <summary>In how many draws it was driven: fewer than the others where it was dropped.</summary>
    public int Draws => Rows.Length;

    /// <summary>Whether it was dropped before the last draw, since another is surely better or a limit surely fails.</summary>
    public bool IsDropped { get; init; }

    /// <summary>Mean of a wish over the draws in which it gets across.</summary>
    public double Mean(int wish) => DrawnNumbers.Mean(Numbers(wish));

    /// <summary>Standard deviation of a wish from draw to draw.</summary>
    public double Deviation(int wish) => DrawnNumbers.Deviation(Numbers(wish));

    /// <summary>The number that a wish stays below in 9 draws of 10; infinite where it does not get across in more than one of ten.</summary>
    public double Ninth(int wish) =>
        DrawnNumbers.Quantile([.. Wishes[wish].Select(v => double.IsNaN(v) ? double.PositiveInfinity : v)], 0.9);

    /// <summary>Whether a limit holds in its share of the drawn cars.</summary>
    /// <param name="limit">Which, from 0.</param>
    /// <param name="share">Its share (–).</param>
    public bool Keeps(int limit, double share) => Holds(Held[limit], Asked[limit], share);

    /// <summary>Whether a limit surely fails.</summary>
    /// <param name="limit">Which, from 0.</param>
    /// <param name="share">Its share (–).</param>
    public bool SurelyBreaks(int limit, double share) =>
        share > 0.0 && Asked[limit] > 0 && WilsonInterval.Of(Held[limit], Asked[limit]).High < share;

    /// <summary>Whether it does nothing that no setup may do in a share of the drawn cars.</summary>
    public bool IsClean(double share) => Holds(Clean, Draws, share);

    /// <summary>Whether it surely does in more.</summary>
    public bool IsSurelyUnclean(double share) => Draws > 0 && WilsonInterval.Of(Clean, Draws).High < share;

    /// <summary>What lies between this setup and another in a wish, in the draws in which both get across: mean and standard deviation.</summary>
    /// <param name="other">The other, driven in the same draws.</param>
    /// <param name="wish">Which, from 0.</param>
    public (double Mean, double Deviation, int Draws) Less(TriedSetup other, int wish)
    {
        var between = new List<double>();
        for (var k = 0; k < Math.Min(Wishes[wish].Length, other.Wishes[wish].Length); k++)
        {
            var difference = Wishes[wish][k] - other.Wishes[wish][k];
            if (double.IsFinite(difference))
            {
                between.Add(difference);
            }
        }

        double[] all = [.. between];
        return (DrawnNumbers.Mean(all), DrawnNumbers.Deviation(all), all.Length);
    }

    /// <summary>
    /// Whether it has less of a wish than another by more than nobody can tell, and by more than the difference scatters from car to car; without
    /// draws as stated.
    /// </summary>
    /// <param name="other">The other, driven in the same draws.</param>
    /// <param name="wish">Which, from 0.</param>
    /// <param name="untold">What nobody can tell (–).</param>
    public bool HasLess(TriedSetup other, int wish, double untold)
    {
        if (Draws == 0 || other.Draws == 0)
        {
            return Stated.Wishes[wish] < other.Stated.Wishes[wish] - untold;
        }

        var (mean, deviation, _) = other.Less(this, wish);
        return mean > Math.Max(untold, Gaussian.Ninety * deviation);
    }

    private static bool Holds(int count, int draws, double share) => draws == 0 || share == 0.0
        || (draws < Few ? count >= share * draws : WilsonInterval.Of(count, draws).Low >= share);

    private double[] Numbers(int wish) => [.. Wishes[wish].Where(double.IsFinite)];
}
