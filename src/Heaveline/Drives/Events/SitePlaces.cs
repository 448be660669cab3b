namespace Heaveline.Drives.Events;

/// <summary>
/// Which bumps lie on one place of the road by their positions: within 15 m and what the fixes leave open, driven in one direction.
/// </summary>
internal sealed class SitePlaces(IReadOnlyList<Sighting> sightings)
{
    // So soon after each other two bumps are two, however near their places are found: no car comes round within so short a way, m, or so soon, s.
    private const double Soon = 60.0;
    private const double SoonAfter = 5.0;

    /// <summary>
    /// How near a bump lies to a site: 1 on it, 0 where it lies elsewhere; null where the position of either is not known and so says nothing.
    /// </summary>
    /// <param name="i">The bump.</param>
    /// <param name="site">Those of the site.</param>
    public double? Closeness(int i, IReadOnlyList<int> site)
    {
        if (sightings[i].Place is not { } place || GroundPlace.Mean(site.Select(j => sightings[j].Place)) is not { } there)
        {
            return null;
        }

        return !place.IsSame(there) || site.Any(j => IsSoon(sightings[i], sightings[j]))
            ? 0.0
            : 1.0 - (0.9 * place.DistanceTo(there) / place.ReachTo(there));
    }

    private static bool IsSoon(Sighting one, Sighting other) => double.IsFinite(one.Distance - other.Distance)
        ? Math.Abs(one.Distance - other.Distance) < Soon
        : Math.Abs(one.Onset.Time - other.Onset.Time) < SoonAfter;
}
