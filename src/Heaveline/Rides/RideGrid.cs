using System.Collections.Concurrent;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>
/// The frequencies of a random ride: Gauss points of panels, each of even ratio, so that a sum over them is an integral over the band; and what the
/// road is there, whatever the car.
/// </summary>
internal sealed class RideGrid
{
    /// <summary>Frequencies that lie side by side in memory, as many as the widest register holds.</summary>
    public const int Block = 8;

    // Distances between wheels' tracks, and weightings, that are remembered: a study that draws tracks meets new ones without end.
    private const int MostKnown = 64;

    private readonly ConcurrentDictionary<double, double[]> together = [];
    private readonly ConcurrentDictionary<Func<double, double>, double[]> weighted = [];
    private readonly RoadSpectrum spectrum;
    private readonly TrackCoherence? tracks;

    /// <param name="spectrum">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="tracks">Two tracks for both axles, or null.</param>
    /// <param name="panels">The panels, of one block each.</param>
    public RideGrid(RoadSpectrum spectrum, double speed, TrackCoherence? tracks, RidePanel[] panels)
    {
        (this.spectrum, this.tracks, Speed) = (spectrum, tracks, speed);
        var (low, high) = (speed * spectrum.Band.Low, speed * spectrum.Band.High);
        var (ratio, count) = (0.5 * Math.Log(high / low), panels.Length * Block);
        (Frequencies, Omegas, Weights) = (new double[count], new double[count], new double[count]);
        for (var k = 0; k < count; k++)
        {
            var panel = panels[k / Block];
            var half = ratio / panel.Of;
            var f = low * Math.Exp(half * ((2.0 * panel.Index) + 1.0 + Panel.Points[k % Block]));
            Frequencies[k] = f;
            Omegas[k] = 2.0 * Math.PI * f;
            Weights[k] = half * Panel.Weights[k % Block] * f * spectrum.HeightsAt(f, speed);
        }
    }

    /// <summary>Speed, m/s.</summary>
    public double Speed { get; }

    /// <summary>Frequencies, Hz.</summary>
    public double[] Frequencies { get; }

    /// <summary>The same, rad/s.</summary>
    public double[] Omegas { get; }

    /// <summary>Density of the road's height times the width of each frequency, m².</summary>
    public double[] Weights { get; }

    /// <summary>Number of blocks.</summary>
    public int Blocks => Omegas.Length / Block;

    /// <summary>Two tracks that both axles run in, or null: each wheel in its own.</summary>
    public TrackCoherence? Tracks => tracks;

    /// <summary>γ of two wheels whose tracks are so far apart, at every frequency.</summary>
    public double[] Together(double distance)
    {
        if (together.TryGetValue(distance, out var known))
        {
            return known;
        }

        var pair = tracks ?? new TrackCoherence { Track = new(distance), Waviness = spectrum.Waviness };
        var made = Array.ConvertAll(Frequencies, f => distance == 0.0 ? 1.0 : pair.At(f / Speed));
        if (together.Count < MostKnown)
        {
            together[distance] = made;
        }

        return made;
    }

    /// <summary>The weights times the square of a factor over frequency in Hz.</summary>
    public double[] Weighted(Func<double, double>? factor)
    {
        if (factor is null)
        {
            return Weights;
        }

        if (weighted.TryGetValue(factor, out var known))
        {
            return known;
        }

        var made = new double[Weights.Length];
        for (var k = 0; k < made.Length; k++)
        {
            var share = factor(Frequencies[k]);
            made[k] = share * share * Weights[k];
        }

        if (weighted.Count < MostKnown)
        {
            weighted[factor] = made;
        }

        return made;
    }

    private static class Panel
    {
        private static readonly MathNet.Numerics.Integration.GaussLegendreRule Rule = new(-1.0, 1.0, Block);

        public static double[] Points { get; } = [.. Enumerable.Range(0, Block).Select(k => Rule.GetAbscissa(k))];

        public static double[] Weights { get; } = [.. Enumerable.Range(0, Block).Select(k => Rule.GetWeight(k))];
    }
}
