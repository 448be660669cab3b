using System.Numerics;
using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Drives.Planning;

/// <summary>
/// How far one pass's headline lies from the next one's over the same hump at the same speed, in closed form: Y = mean of (θ + n)² over the first
/// second of the settling, θ the swing after the hump, n a Gaussian pitch of autocovariance R that differs from pass to pass. Then E Y = mean θ² +
/// R(0), Var Y = (4 ΣΣ θᵢθⱼRᵢⱼ + 2 ΣΣ Rᵢⱼ²)/K², and ln of the root scatters by ½ √Var Y/E Y.
/// </summary>
internal static class PassScatter
{
    /// <summary>Share of a road's roughness, in power, that one line differs by from the next (–). Common practice, no source.</summary>
    public const double OwnLine = 0.3;

    /// <summary>The instant at which the rear wheels leave is known to so much, s. Common practice, no source.</summary>
    public const double Onset = 0.02;

    /// <summary>Speed of a pass is known to so much of it (–), by the delay between the axles.</summary>
    public const double Speed = 0.01;

    /// <summary>Noise density of the turn rate, one-sided, (rad/s)²/Hz: 0.004 rad/s a sample at 100 Hz.</summary>
    public const double TurnNoise = 3.2e-7;

    /// <summary>Below this pitch is taken off a log, Hz.</summary>
    public const double Lowest = 0.25;

    private const double Highest = 25.0;
    private const double Step = 0.02;

    /// <summary>Standard deviation of the logarithm of the headline from roughness and noise.</summary>
    /// <param name="pitch">The swing after the hump over the window, rad, at even steps.</param>
    /// <param name="step">s.</param>
    /// <param name="density">One-sided density of the pitch that differs from pass to pass, rad²/Hz, by the frequency in Hz.</param>
    public static double Of(IReadOnlyList<double> pitch, double step, Func<double, double> density)
    {
        var count = pitch.Count;
        var covariance = new double[count];
        for (var f = Lowest + (0.5 * Step); f < Highest; f += Step)
        {
            var power = density(f) * Step;
            for (var k = 0; k < count; k++)
            {
                covariance[k] += power * Math.Cos(2.0 * Math.PI * f * k * step);
            }
        }

        var (square, mixed, quartic) = (0.0, 0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            square += pitch[i] * pitch[i];
            for (var j = 0; j < count; j++)
            {
                var r = covariance[Math.Abs(i - j)];
                mixed += pitch[i] * pitch[j] * r;
                quartic += r * r;
            }
        }

        var variance = ((4.0 * mixed) + (2.0 * quartic)) / ((double)count * count);
        return 0.5 * Math.Sqrt(variance) / ((square / count) + covariance[0]);
    }

    /// <summary>Standard deviation of the logarithm of a pass's headline, from roughness, noise, onset and speed.</summary>
    /// <param name="pass">A pass over an obstacle, its settling recorded for <see cref="Window"/> at least.</param>
    /// <param name="slope">d ln headline/d ln speed about it.</param>
    /// <param name="road">How rough the road about the obstacle is.</param>
    public static double Of(Pass pass, double slope, RoadClass road)
    {
        const double Even = 0.02;
        var first = (int)Math.Round((pass.RearLeaves - pass.Start) / pass.SampleStep);
        var every = (int)Math.Round(Even / pass.SampleStep);
        double[] pitch = [.. Enumerable.Range(0, (int)(Window / Even)).Select(k => pass.Pitch[first + (k * every)])];
        // The lowest and the highest that count, with a step that follows a damped swing; straight between.
        double[] frequencies = [.. Enumerable.Range(0, 250).Select(k => 0.1 * (k + 1))];
        var transfer = FrequencyResponse.Of(pass.Model, pass.Speed, frequencies).Of(RideSignal.Pitch).Both;
        var roughness = Of(pitch, Even, f => NoiseDensity(f) + (OwnLine * OfRoad(f)));
        // The window slips by the doubt of the onset.
        var square = pitch.Average(p => p * p);
        var onset = 0.5 * Math.Abs((pitch[^1] * pitch[^1]) - (pitch[0] * pitch[0])) / (Window * square) * Onset;
        return Math.Sqrt((roughness * roughness) + (onset * onset) + Math.Pow(slope * Speed, 2));

        double OfRoad(double f)
        {
            var at = Math.Clamp((f / 0.1) - 1.0, 0.0, frequencies.Length - 1.001);
            var k = (int)at;
            var power = SquareOf(transfer[k]) + ((at - k) * (SquareOf(transfer[k + 1]) - SquareOf(transfer[k])));
            // G(n) = G₀·(n/0.1)⁻² over distance; f = n·V, so the density over frequency is G(f/V)/V.
            var n = f / pass.Speed;
            return power * road.Mean.Si * Math.Pow(n / 0.1, -2.0) / pass.Speed;
        }
    }

    private static double SquareOf(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);

    /// <summary>Density of the pitch that a turn rate's noise makes, rad²/Hz.</summary>
    public static double NoiseDensity(double f) => TurnNoise / Math.Pow(2.0 * Math.PI * f, 2);

    /// <summary>The chance that so many passes before and after show a change (–), at the level of 10 %, speed taken out.</summary>
    /// <param name="passes">Passes in each state, 3 or more.</param>
    /// <param name="change">Change of the logarithm.</param>
    /// <param name="scatter">Standard deviation of one pass's logarithm.</param>
    public static double Power(int passes, double change, double scatter)
    {
        // Site, change and slope with speed; from eight passes in each state its square too.
        var freedom = (2 * passes) - (passes >= 8 ? 4 : 3);
        return StudentPower.Above(Math.Abs(change) / (scatter * Math.Sqrt(2.0 / passes)), freedom, LeastSquares.Student(freedom, 0.9));
    }

    /// <summary>Fewest passes in each state, four or more, that show a change four times of five; null above a number.</summary>
    public static int? PassesFor(double change, double scatter, int most)
    {
        for (var passes = 4; passes <= most; passes++)
        {
            if (Power(passes, change, scatter) >= 0.8)
            {
                return passes;
            }
        }

        return null;
    }

    /// <summary>Window of the headline, s.</summary>
    public static double Window => PitchSettling.Second;
}
