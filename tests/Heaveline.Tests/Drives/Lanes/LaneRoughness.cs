using Heaveline.Roads;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>
/// The roughness that lies about a site at every pass of every drive: within half its reach each pass meets it whole, but for the share that is a
/// line's own; beyond, it gives way to that of the pass, powers adding up to one.
/// </summary>
internal sealed class LaneRoughness
{
    private const double Reach = 40.0;
    private const double Whole = 20.0;
    private const ulong Seed = 7000;

    private readonly double share;
    private readonly (double At, ProfileReader Reader)[] crossings;
    private int next;

    /// <param name="plan">The drive.</param>
    /// <param name="own">The share of the roughness, in power, that is a pass's own.</param>
    /// <param name="isLeft">Which track.</param>
    /// <param name="rough">Roughness of a length and a seed.</param>
    public LaneRoughness(LanePlan plan, double own, bool isLeft, Func<double, ulong, (Profile Left, Profile Right)> rough)
    {
        share = 1.0 - own;
        var sites = plan.Sites.Select((site, i) => (site.Name, Track: rough(3.0 * Reach, Seed + (ulong)i)))
            .ToDictionary(s => s.Name, s => isLeft ? s.Track.Left : s.Track.Right);
        crossings = [.. plan.Crossings.OrderBy(c => c.Distance).Select(c => (c.Distance, sites[c.Site].Reader()))];
    }

    /// <summary>Height and slope at a distance, from those of the pass alone; distances in growing order.</summary>
    public (double Height, double Slope) Of(double x, double height, double slope)
    {
        while (next + 1 < crossings.Length && x > 0.5 * (crossings[next].At + crossings[next + 1].At))
        {
            next++;
        }

        var off = x - crossings[next].At;
        if (Math.Abs(off) >= Reach)
        {
            return (height, slope);
        }

        // w of the site's in amplitude, falling from its share to nothing.
        var into = Math.Clamp((Reach - Math.Abs(off)) / (Reach - Whole), 0.0, 1.0);
        var (sine, cosine) = Math.SinCos(0.5 * Math.PI * into);
        var site = Math.Sqrt(share) * sine;
        var grows = into is > 0.0 and < 1.0 ? -Math.Sign(off) * Math.Sqrt(share) * cosine * 0.5 * Math.PI / (Reach - Whole) : 0.0;
        var pass = Math.Sqrt(1.0 - (site * site));
        crossings[next].Reader.At(off + (1.5 * Reach), out var h, out var s);
        return ((pass * height) + (site * h), (pass * slope) - (site * grows / pass * height) + (site * s) + (grows * h));
    }
}
