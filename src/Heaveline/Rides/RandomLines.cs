using System.Numerics;
using MathNet.Numerics.Integration;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary>
/// A car on a random road, frequency by frequency: positions and road heights in each independent wave. Frequencies are Gauss points of panels of
/// equal ratio, so that a sum over them is an integral over the band.
/// </summary>
internal sealed class RandomLines
{
    private const int Points = 8;

    private static readonly GaussLegendreRule Rule = new(-1.0, 1.0, Points);

    private readonly double[] omegas;
    private readonly double[] weights;
    private readonly Complex[][][] heights;
    private readonly Complex[][][] positions;

    private RandomLines(double[] omegas, double[] weights, Complex[][][] heights, Complex[][][] positions) =>
        (this.omegas, this.weights, this.heights, this.positions) = (omegas, weights, heights, positions);

    /// <summary>Frequencies, Hz.</summary>
    public IReadOnlyList<double> Frequencies => [.. omegas.Select(w => w / (2.0 * Math.PI))];

    /// <summary>The road alone: density of its height times the width of each frequency.</summary>
    /// <param name="drive">The road under the wheels.</param>
    /// <param name="density">Density of heights, m²/Hz, over frequency.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="low">Lowest frequency, Hz.</param>
    /// <param name="high">Highest frequency, Hz.</param>
    /// <param name="panels">Number of panels.</param>
    public static RandomLines Of(RoadDrive drive, Func<double, double> density, double speed, double low, double high, int panels)
    {
        var half = 0.5 * Math.Log(high / low) / panels;
        var (omegas, weights) = (new double[panels * Points], new double[panels * Points]);
        var heights = new Complex[panels * Points][][];
        for (var k = 0; k < omegas.Length; k++)
        {
            var f = low * Math.Exp(half * ((2.0 * (k / Points)) + 1.0 + Rule.GetAbscissa(k % Points)));
            omegas[k] = 2.0 * Math.PI * f;
            weights[k] = half * Rule.GetWeight(k % Points) * f * density(f);
            heights[k] = drive.Waves(f / speed);
        }

        return new RandomLines(omegas, weights, heights, []);
    }

    /// <summary>The same road with a car on it.</summary>
    public RandomLines Under(LinearRide ride)
    {
        var moved = new Complex[omegas.Length][][];
        for (var k = 0; k < moved.Length; k++)
        {
            var answer = ride.Answer(omegas[k]);
            moved[k] = [.. heights[k].Select(wave =>
            {
                var sum = new Complex[ride.Count];
                for (var i = 0; i < sum.Length; i++)
                {
                    sum[i] = (answer[i, 0] * wave[0]) + (answer[i, 1] * wave[1]) + (answer[i, 2] * wave[2]) + (answer[i, 3] * wave[3]);
                }

                return sum;
            })];
        }

        return new RandomLines(omegas, weights, heights, moved);
    }

    /// <summary>Mean square of a signal, weighted by the square of a factor over frequency in Hz.</summary>
    public double MeanSquare(RideSignal signal, Func<double, double>? factor = null)
    {
        var sum = 0.0;
        for (var k = 0; k < omegas.Length; k++)
        {
            var weight = factor is null ? 1.0 : factor(omegas[k] / (2.0 * Math.PI));
            sum += weight * weight * weights[k] * Square(signal, k);
        }

        return sum;
    }

    /// <summary>Square of a signal's magnitude per density of the road's height at frequency k.</summary>
    public double Square(RideSignal signal, int k)
    {
        var sum = 0.0;
        for (var wave = 0; wave < positions[k].Length; wave++)
        {
            var value = LinearRide.Read(signal, omegas[k], positions[k][wave], heights[k][wave]);
            sum += (value.Real * value.Real) + (value.Imaginary * value.Imaginary);
        }

        return sum;
    }
}
