using System.Runtime.Intrinsics;
using Heaveline.Numerics;

namespace Heaveline.Roads;

/// <summary>
/// The waves a random road is the sum of [Shinozuka and Deodatis, Simulation of stochastic processes by spectral representation, Appl. Mech. Rev. 44
/// (1991) 191, with normal amplitudes, for which the sum is Gaussian at any number of waves]. The band is cut into cells of width
/// min(n/200, 1/2048 cycles/m). Each cell has one wave at a random place in it, h = a cos 2πnx − b sin 2πnx with a, b normal of the cell's variance
/// ∫G dn. The right track has the same frequencies and amplitudes γ·(left) + √(1 − γ²)·(another draw).
/// </summary>
/// <remarks>
/// The cells do not depend on the length, so a longer road extends a shorter one; random places in them leave no common period, so it never
/// repeats. A road much longer than 2 km resolves single waves at high n, and one longer than about 18 km at the low end.
/// Sums run four wide on every machine, in one order, so that a machine with wider registers adds up the same numbers in the same order.
/// </remarks>
internal sealed class RoadWaves
{
    private const double RelativeWidth = 1.0 / 200.0;
    private const double WidestCell = 1.0 / 2048.0;
    private const int Lanes = 4;

    // Points on either side of one with exact phases: rotation loses about one rounding a point.
    private const int Half = 32;
    private const int Block = 2 * Half;

    private readonly double[] n;

    // a and b of left and right: the height is a cos − b sin.
    private readonly double[] la;
    private readonly double[] lb;
    private readonly double[] ra;
    private readonly double[] rb;

    private RoadWaves(double[] n, double[] la, double[] lb, double[] ra, double[] rb) =>
        (this.n, this.la, this.lb, this.ra, this.rb) = (n, la, lb, ra, rb);

    internal static RoadWaves Of(RandomRoad road)
    {
        var spectrum = road.Spectrum;
        var edges = Edges(spectrum.Band);
        var coherence = new TrackCoherence { Track = road.Track, Waviness = spectrum.Waviness };
        var cells = edges.Count - 1;

        // Waves of no height fill the last group of lanes.
        var padded = (cells + Lanes - 1) / Lanes * Lanes;
        var (n, la, lb, ra, rb) = (new double[padded], new double[padded], new double[padded], new double[padded], new double[padded]);
        for (var i = 0; i < cells; i++)
        {
            var (low, high) = (edges[i], edges[i + 1]);
            var draw = 8UL * (ulong)i;
            n[i] = low + ((high - low) * SplitMix.Uniform(road.Seed, draw));
            var deviation = Math.Sqrt(spectrum.VarianceBetween(low, high));
            var (a, b) = SplitMix.Normals(road.Seed, draw + 1UL);
            var (c, d) = SplitMix.Normals(road.Seed, draw + 3UL);
            var gamma = coherence.At(n[i]);
            var apart = Math.Sqrt(1.0 - (gamma * gamma));
            (la[i], lb[i]) = (deviation * a, deviation * b);
            (ra[i], rb[i]) = (deviation * ((gamma * a) + (apart * c)), deviation * ((gamma * b) + (apart * d)));
        }

        return new RoadWaves(n, la, lb, ra, rb);
    }

    /// <summary>Heights and slopes of both tracks at 0, spacing, 2·spacing … .</summary>
    internal ((double[] Heights, double[] Slopes) Left, (double[] Heights, double[] Slopes) Right) Sum(
        int points, double spacing, CancellationToken stop = default)
    {
        var (left, leftSlopes, right, rightSlopes) = (new double[points], new double[points], new double[points], new double[points]);
        var sums = new Sums[Half + 1];
        var (turnCosines, turnSines) = Phases(spacing);
        for (var start = 0; start < points; start += Block)
        {
            // Whole blocks even at the end, so that the same numbers are added in the same way whatever the length.
            stop.ThrowIfCancellationRequested();
            Array.Clear(sums);
            var middle = start + Half;
            AddBlock(sums, middle * spacing, turnCosines, turnSines);
            for (var i = start; i < Math.Min(start + Block, points); i++)
            {
                ref readonly var at = ref sums[Math.Abs(i - middle)];
                var side = Math.Sign(i - middle);
                left[i] = Add(at.LeftEven) - (side * Add(at.LeftOdd));
                leftSlopes[i] = -(side * Add(at.LeftSlopeOdd)) - Add(at.LeftSlopeEven);
                right[i] = Add(at.RightEven) - (side * Add(at.RightOdd));
                rightSlopes[i] = -(side * Add(at.RightSlopeOdd)) - Add(at.RightSlopeEven);
            }
        }

        return ((left, leftSlopes), (right, rightSlopes));
    }

    private static List<double> Edges(SpatialBand band)
    {
        var edges = new List<double> { band.Low };
        while (edges[^1] < band.High)
        {
            edges.Add(Math.Min(edges[^1] + Math.Min(RelativeWidth * edges[^1], WidestCell), band.High));
        }

        return edges;
    }

    // About the middle of a block the height is a′ cos − b′ sin of the distance from it: cosines are even and sines odd, so one product serves
    // the points on both sides.
    private void AddBlock(Sums[] sums, double middle, double[] turnCosines, double[] turnSines)
    {
        var (cosines, sines) = Phases(middle);
        for (var k = 0; k < n.Length; k += Lanes)
        {
            var (cm, sm) = (Four(cosines, k), Four(sines, k));
            var (dc, ds) = (Four(turnCosines, k), Four(turnSines, k));
            var omega = 2.0 * Math.PI * Four(n, k);
            var (a, b) = ((Four(la, k) * cm) - (Four(lb, k) * sm), (Four(la, k) * sm) + (Four(lb, k) * cm));
            var (p, q) = ((Four(ra, k) * cm) - (Four(rb, k) * sm), (Four(ra, k) * sm) + (Four(rb, k) * cm));
            var (aSlope, bSlope, pSlope, qSlope) = (omega * a, omega * b, omega * p, omega * q);
            var (c, s) = (Vector256<double>.One, Vector256<double>.Zero);
            for (var i = 0; i < sums.Length; i++)
            {
                ref var sum = ref sums[i];
                sum.LeftEven += a * c;
                sum.LeftOdd += b * s;
                sum.LeftSlopeEven += bSlope * c;
                sum.LeftSlopeOdd += aSlope * s;
                sum.RightEven += p * c;
                sum.RightOdd += q * s;
                sum.RightSlopeEven += qSlope * c;
                sum.RightSlopeOdd += pSlope * s;
                (c, s) = ((c * dc) - (s * ds), (s * dc) + (c * ds));
            }
        }
    }

    // cos and sin of 2πnx, whole turns taken off first.
    private (double[] Cosines, double[] Sines) Phases(double x)
    {
        var (cosines, sines) = (new double[n.Length], new double[n.Length]);
        for (var i = 0; i < n.Length; i++)
        {
            var turns = n[i] * x;
            (sines[i], cosines[i]) = Math.SinCos(2.0 * Math.PI * (turns - Math.Floor(turns)));
        }

        return (cosines, sines);
    }

    private static double Add(Vector256<double> v) => (v[0] + v[1]) + (v[2] + v[3]);

    private static Vector256<double> Four(double[] values, int at) => Vector256.Create(values.AsSpan(at, Lanes));

    private struct Sums
    {
        internal Vector256<double> LeftEven;
        internal Vector256<double> LeftOdd;
        internal Vector256<double> LeftSlopeEven;
        internal Vector256<double> LeftSlopeOdd;
        internal Vector256<double> RightEven;
        internal Vector256<double> RightOdd;
        internal Vector256<double> RightSlopeEven;
        internal Vector256<double> RightSlopeOdd;
    }
}
