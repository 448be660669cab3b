using Heaveline.Roads;

namespace Heaveline.Tests.Drives.Lanes;

/// <summary>The road of a planned drive: two tracks, another line at every lap, a rough stretch, and the sites on it.</summary>
internal static class LaneRoad
{
    private const double Spacing = 0.025;
    private const double Blend = 10.0;
    private const double Spare = 40.0;

    /// <summary>The road.</summary>
    /// <param name="plan">The drive.</param>
    /// <param name="density">Displacement density of the lane at 0.1 cycles/m, m³.</param>
    /// <param name="roughDensity">That of the rough stretch.</param>
    /// <param name="seed">Of the roughness.</param>
    /// <param name="own">
    /// The share of it, in power, that is a pass's own about a site, since no two keep one line; the rest lies about that site at every pass of
    /// every drive. 1: every pass meets another road.
    /// </param>
    public static Road Of(LanePlan plan, double density, double roughDensity, ulong seed, double own = 1.0)
    {
        var length = plan.Line.Distance(plan.Line.Length) + Spare;
        var (left, right) = Rough(length, seed);
        var more = Math.Sqrt(roughDensity / density) - 1.0;
        var sites = plan.Crossings
            .Select(c => (At: c.Distance, Site: plan.Sites.Single(s => s.Name == c.Site)))
            .Select(c => (c.At, c.Site.Tracks, Profile: c.Site.Obstacle.Draw())).OrderBy(s => s.At).ToArray();
        return new Road
        {
            Name = "Larch Lane",
            Kind = RoadKind.Measured,
            Left = Drawn(left, isLeft: true),
            Right = Drawn(right, isLeft: false),
            Caption = "Larch Lane, invented",
        };

        (Profile Left, Profile Right) Rough(double over, ulong by) => new RandomRoad
        {
            Spectrum = new RoadSpectrum { Density = new(density) },
            Track = new(1.5),
            Length = new(over),
            LeadIn = new(5.0),
            Seed = by,
        }.Draw();

        Profile Drawn(Profile random, bool isLeft)
        {
            var count = (int)(length / Spacing);
            var (knots, heights, slopes) = (new double[count], new double[count], new double[count]);
            var (reader, next) = (random.Reader(), 0);
            var without = isLeft ? Tracks.Right : Tracks.Left;
            var about = own < 1.0 ? new LaneRoughness(plan, own, isLeft, Rough) : null;
            for (var i = 0; i < count; i++)
            {
                var x = knots[i] = i * Spacing;
                while (next < sites.Length && x > sites[next].At + sites[next].Profile.End)
                {
                    next++;
                }

                reader.At(x, out var h, out var s);
                (h, s) = about?.Of(x, h, s) ?? (h, s);
                var (gain, grows) = Gain(x);
                var (siteHeight, siteSlope) = next < sites.Length && sites[next].Tracks != without
                    ? (sites[next].Profile.Height(x - sites[next].At), sites[next].Profile.Slope(x - sites[next].At))
                    : (0.0, 0.0);
                heights[i] = (gain * h) + siteHeight;
                slopes[i] = (gain * s) + (grows * h) + siteSlope;
            }

            var coefficients = new double[Cubic.Order * count];
            for (var i = 0; i + 1 < count; i++)
            {
                Cubic.Write(coefficients.AsSpan(Cubic.Order * i, Cubic.Order), Spacing, heights[i], slopes[i], heights[i + 1], slopes[i + 1]);
            }

            coefficients[Cubic.Order * (count - 1)] = heights[^1];
            return Profile.FromCubics(knots, coefficients);
        }

        (double Gain, double Grows) Gain(double x)
        {
            var (from, to) = plan.Rough;
            var into = Math.Min(x - from, to - x) / Blend;
            if (into is <= 0.0 or >= 1.0)
            {
                return (into <= 0.0 ? 1.0 : 1.0 + more, 0.0);
            }

            var (sine, cosine) = Math.SinCos(Math.PI * into);
            return (1.0 + (0.5 * more * (1.0 - cosine)), (x < 0.5 * (from + to) ? 0.5 : -0.5) * more * Math.PI / Blend * sine);
        }
    }
}
