using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Studies;

/// <summary>The chance of an event, year by year and in between.</summary>
/// <param name="Event">The event.</param>
/// <param name="Shares">Share of the drawn cars upon which it has come, in each year from 0 on (–).</param>
/// <param name="Moments">When it comes upon a car (1), or leaves it (−1), in years, one after another; what is so today comes at 0.</param>
/// <param name="Draws">How many cars were drawn.</param>
/// <param name="Reading">The reading that shows it best; null where too few cars have it, or have it not.</param>
public sealed record YearsChance(
    YearsEvent Event, ImmutableArray<double> Shares, ImmutableArray<(double Year, int Change)> Moments, int Draws, YearsReading? Reading)
{
    // A year that is told no closer than this is no year to go by: a choice of words.
    private const double Close = 1.0;

    /// <summary>Whether it is more likely than not before any year has passed.</summary>
    public bool IsSo => Shares[0] >= 0.5;

    /// <summary>
    /// Between which years the chance reaches one half, 9 times out of 10 of such draws: where the share of the drawn cars leaves the interval of
    /// one half from below, and where above; null where it never does.
    /// </summary>
    public (double? From, double? To) Half => WilsonInterval.Of(Draws / 2, Draws) is var half ? (YearOf(half.Low), YearOf(half.High)) : default;

    /// <summary>Whether the draws tell the year of one half to a year or closer.</summary>
    public bool IsTold => YearOf(0.5) is not null && Half is { From: { } from, To: { } to } && to - from <= Close;

    /// <summary>The first moment at which the share of the cars reaches a share, each car by its own moment; null where it never does.</summary>
    /// <param name="share">The share (–).</param>
    public double? YearOf(double share)
    {
        var count = 0;
        foreach (var (year, change) in Moments)
        {
            count += change;
            if (count >= share * Draws)
            {
                return year;
            }
        }

        return null;
    }
}
