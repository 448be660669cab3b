using System.Numerics;
using Heaveline.Models;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>
/// A random road under four wheels: cross spectra S_ij = G(n)·γ(|y_i − y_j|)·e^{i2πn(x_i − x_j)}, each wheel's wave averaged over its contact length.
/// The real matrix γ is split as Q·Qᵀ (Cholesky), so that the road is a sum of at most four waves that have nothing to do with each other.
/// </summary>
internal sealed class RoadDrive
{
    // Less than this of a wheel's variance is rounding.
    private const double Nothing = 1e-13;

    private readonly RideModel model;
    private readonly RoadSpectrum spectrum;
    private readonly TrackCoherence? tracks;

    /// <param name="model">The car.</param>
    /// <param name="spectrum">The road.</param>
    /// <param name="tracks">Two tracks for both axles, or null: every wheel in its own track of an isotropic surface.</param>
    public RoadDrive(RideModel model, RoadSpectrum spectrum, TrackCoherence? tracks) =>
        (this.model, this.spectrum, this.tracks) = (model, spectrum, tracks);

    /// <summary>Heights of the four wheels in each of the waves, for a unit density of the road's height.</summary>
    public Complex[][] Waves(double n)
    {
        var q = new double[4, 4];
        Factor(Together(n), q);
        var wheels = WheelWaves.Of(model, n);
        return [.. Enumerable.Range(0, 4)
            .Where(k => Enumerable.Range(0, 4).Any(i => q[i, k] != 0.0))
            .Select(k => wheels.Select((w, i) => w * q[i, k]).ToArray())];
    }

    /// <summary>γ of every pair of wheels.</summary>
    public double[,] Together(double n)
    {
        var gamma = new double[4, 4];
        var known = new Dictionary<double, double> { [0.0] = 1.0 };
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                var distance = tracks is null ? Math.Abs(model.Y[i] - model.Y[j]) : (i + j) % 2 == 0 ? 0.0 : tracks.Track.Si;
                if (!known.TryGetValue(distance, out var value))
                {
                    var pair = tracks ?? new TrackCoherence { Track = new(distance), Waviness = spectrum.Waviness };
                    known[distance] = value = pair.At(n);
                }

                gamma[i, j] = value;
            }
        }

        return gamma;
    }

    /// <summary>Q of γ = Q·Qᵀ; what it holds is written over.</summary>
    public static void Factor(double[,] gamma, double[,] q)
    {
        Array.Clear(q);
        for (var k = 0; k < 4; k++)
        {
            var rest = gamma[k, k];
            for (var m = 0; m < k; m++)
            {
                rest -= q[k, m] * q[k, m];
            }

            if (rest <= Nothing)
            {
                continue;
            }

            q[k, k] = Math.Sqrt(rest);
            for (var i = k + 1; i < 4; i++)
            {
                var sum = gamma[i, k];
                for (var m = 0; m < k; m++)
                {
                    sum -= q[i, m] * q[k, m];
                }

                q[i, k] = sum / q[k, k];
            }
        }
    }
}
