using System.Collections.Immutable;

namespace Heaveline.Studies;

/// <summary>The chance of an event, year by year.</summary>
/// <param name="Event">The event.</param>
/// <param name="Shares">Share of the drawn cars upon which it has come, in each year from 0 on (–).</param>
/// <param name="Reading">The reading that shows it best; null where too few cars have it, or have it not.</param>
public sealed record YearsChance(YearsEvent Event, ImmutableArray<double> Shares, YearsReading? Reading)
{
    /// <summary>Whether it is more likely than not before any year has passed.</summary>
    public bool IsSo => Shares[0] >= 0.5;

    /// <summary>The first year at which the chance reaches a share, straight between the years; null where it never does.</summary>
    /// <param name="share">The share (–).</param>
    public double? YearOf(double share)
    {
        for (var year = 0; year < Shares.Length; year++)
        {
            if (Shares[year] >= share)
            {
                return year == 0 ? 0.0 : year - 1.0 + ((share - Shares[year - 1]) / (Shares[year] - Shares[year - 1]));
            }
        }

        return null;
    }
}
