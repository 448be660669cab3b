using System.Numerics;
using Heaveline.Drives;
using Heaveline.Drives.Comparison;
using Heaveline.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Heaveline.Tests.Drives.Comparison;

/// <summary>
/// Passes of a linear half car over humps in rough road, in the frequency domain: what before and after are planted with. A lap of 256 m,
/// one hump of 3.7 m and 60 to 90 mm for each site; of the roughness (displacement density falling with the square of the wave number) a
/// part belongs to the site, the rest changes from pass to pass, since no driver finds the same line twice. The gyro hums, the onset is
/// known to 20 ms, the speed to one per cent.
/// </summary>
internal sealed class PlantedHumps
{
    private const int Points = 4096;
    private const double Lap = 256.0;
    private const double Step = Lap / Points;
    private const double Wheelbase = 2.7;
    private const double HumpLength = 3.7;
    private const double Rate = 100.0;
    private const double From = -4.0;
    private const double To = 7.0;

    private readonly double roughness;
    private readonly double speedScatter;
    private readonly double own;

    /// <summary>Humps in a road.</summary>
    /// <param name="roughness">Displacement density at 0.1 cycles/m, m³: 16e-6 is class A, 64e-6 class B (ISO 8608).</param>
    /// <param name="speedScatter">Standard deviation of a pass's speed, as a share.</param>
    /// <param name="own">Share of the roughness's power that changes from pass to pass.</param>
    public PlantedHumps(double roughness, double speedScatter, double own) =>
        (this.roughness, this.speedScatter, this.own) = (roughness, speedScatter, own);

    /// <summary>A site whose hump is 20 mm high, where the road makes most of the number; null for none.</summary>
    public int? LowSite { get; init; }

    /// <summary>The car before: front and rear frequency, damping, dynamic index and share of the mass in front.</summary>
    public static HalfCar Before { get; } = new(1.127, 1.095, 0.29, 0.22, 0.865, 0.475);

    /// <summary>The same with firmer dampers.</summary>
    public static HalfCar After { get; } = Before with { RearDamping = 0.22 * 1.17, FrontDamping = 0.29 * 1.12 };

    /// <summary>Passes over the hump of a site about 7 m/s.</summary>
    /// <param name="car">The car.</param>
    /// <param name="site">The site: hump and the road under it.</param>
    /// <param name="count">How many.</param>
    /// <param name="seed">Draws lines, speeds, noise.</param>
    /// <param name="isAfter">What is written on them.</param>
    public IReadOnlyList<ComparedPass> Passes(HalfCar car, int site, int count, ulong seed, bool isAfter)
    {
        var common = Rough(SplitMix.At(77UL, (ulong)site), 0);
        var height = site == LowSite ? 0.02 : 0.06 + (0.03 * SplitMix.Uniform(SplitMix.At(78UL, (ulong)site), 0));
        var hump = Hump(height);
        return [.. Enumerable.Range(0, count).Select(i => Pass(car, site, common, hump, SplitMix.At(seed, (ulong)((1000 * site) + i)), isAfter, i))];
    }

    /// <summary>Some of them, drawn without putting back; those that are fast oftener, or more seldom.</summary>
    /// <param name="bank">Passes to draw from.</param>
    /// <param name="count">How many.</param>
    /// <param name="tilt">By how many of their own standard deviations the mean of the log speeds is moved, about.</param>
    /// <param name="seed">Draws them.</param>
    public static IReadOnlyList<ComparedPass> Drawn(IReadOnlyList<ComparedPass> bank, int count, double tilt, ulong seed)
    {
        double[] logs = [.. bank.Select(p => Math.Log(p.Speed))];
        var mean = logs.Average();
        var deviation = Math.Sqrt(logs.Average(l => (l - mean) * (l - mean)));
        // The smallest of exponential times with the weights for rates are a draw without putting back.
        return
        [
            .. bank.Select((p, i) => (Pass: p, At: -Math.Log(SplitMix.Uniform(seed, (ulong)i)) / Math.Exp(tilt * (logs[i] - mean) / deviation)))
                .OrderBy(p => p.At).Take(count).Select(p => p.Pass),
        ];
    }

    private ComparedPass Pass(HalfCar car, int site, Complex[] common, Complex[] hump, ulong seed, bool isAfter, int number)
    {
        var (first, second) = SplitMix.Normals(seed, 0);
        var speed = 7.0 * Math.Exp(speedScatter * first);
        var line = Rough(seed, 100);
        var (mine, sites) = (Math.Sqrt(own), Math.Sqrt(1.0 - own));
        var spectrum = new Complex[Points];
        for (var k = 1; k < Points / 2; k++)
        {
            var f = k / Lap * speed;
            if (f is > 0.05 and < 30.0)
            {
                spectrum[k] = ((sites * common[k]) + (mine * line[k]) + hump[k]) * car.PitchRate(f, Wheelbase, speed);
                spectrum[Points - k] = Complex.Conjugate(spectrum[k]);
            }
        }

        Fourier.Inverse(spectrum, FourierOptions.Matlab);
        return new ComparedPass
        {
            Site = $"site {site + 1}",
            Speed = speed * (1.0 + (0.01 * second)),
            Value = Headline(spectrum, speed, seed),
            IsAfter = isAfter,
            Number = number + 1,
        };
    }

    // RMS pitch of the first second after the rear wheels have left, from a pitch rate with noise and bias, what lies below 0.25 Hz taken off.
    private static double Headline(Complex[] rate, double speed, ulong seed)
    {
        var count = (int)((To - From) * Rate);
        var gyro = new double[count];
        for (var i = 0; i < count; i++)
        {
            var at = ((Lap / 2.0) + (speed * (From + (i / Rate)))) / Step;
            var j = (int)Math.Floor(at);
            var share = at - j;
            double Value(int k) => rate[((k % Points) + Points) % Points].Real;
            gyro[i] = ((1.0 - share) * Value(j)) + (share * Value(j + 1)) + (0.004 * SplitMix.Normals(seed, (ulong)(20000 + (2 * i))).First);
        }

        var mean = gyro.Average();
        var pitch = new double[count];
        for (var i = 1; i < count; i++)
        {
            pitch[i] = pitch[i - 1] + ((gyro[i] - mean) / Rate);
        }

        var slow = ZeroPhase.Low(pitch, Rate, 0.25);
        var begin = ((HumpLength + Wheelbase) / speed) + (0.02 * SplitMix.Normals(seed, 2).First);
        var from = (int)Math.Ceiling((begin - From) * Rate);
        return Math.Sqrt(Enumerable.Range(from, (int)Rate).Average(i => (pitch[i] - slow[i]) * (pitch[i] - slow[i])));
    }

    // Heights of a closed lap as their transform: |X|² = G/2·lap/step², random phases.
    private Complex[] Rough(ulong seed, ulong first)
    {
        var spectrum = new Complex[Points / 2];
        for (var k = 1; k < spectrum.Length; k++)
        {
            var n = k / Lap;
            var amplitude = n < 0.02 ? 0.0 : Math.Sqrt(roughness * Math.Pow(n / 0.1, -2.0) / 2.0 * Lap) / Step;
            spectrum[k] = Complex.FromPolarCoordinates(amplitude, 2.0 * Math.PI * SplitMix.Uniform(seed, first + (ulong)k));
        }

        return spectrum;
    }

    // A part of a circle.
    private static Complex[] Hump(double height)
    {
        var radius = ((HumpLength * HumpLength / 4.0) + (height * height)) / (2.0 * height);
        var heights = new Complex[Points];
        for (var i = 0; i < Points; i++)
        {
            var x = (i * Step) - (Lap / 2.0);
            heights[i] = x is < 0.0 or > HumpLength
                ? 0.0
                : Math.Sqrt((radius * radius) - Math.Pow(x - (HumpLength / 2.0), 2.0)) - (radius - height);
        }

        Fourier.Forward(heights, FourierOptions.Matlab);
        return heights;
    }

    /// <summary>A linear half car over one kilogram of sprung mass, its numbers those of the trade.</summary>
    /// <param name="FrontFrequency">Hz, on rigid tyres.</param>
    /// <param name="RearFrequency">Hz, on rigid tyres.</param>
    /// <param name="FrontDamping">Damping ratio.</param>
    /// <param name="RearDamping">Damping ratio.</param>
    /// <param name="Index">Dynamic index k²/(b·c).</param>
    /// <param name="FrontShare">Share of the sprung mass on the front axle.</param>
    internal sealed record HalfCar(
        double FrontFrequency, double RearFrequency, double FrontDamping, double RearDamping, double Index, double FrontShare)
    {
        private const double HeightOverAxis = 0.25;

        /// <summary>Pitch rate (nose down) over the height of the road under the front wheels, rad/s per m.</summary>
        public Complex PitchRate(double frequency, double wheelbase, double speed)
        {
            var s = new Complex(0.0, 2.0 * Math.PI * frequency);
            var (b, c) = ((1.0 - FrontShare) * wheelbase, FrontShare * wheelbase);
            var (frontRoad, frontBody) = Axle(s, FrontShare, FrontFrequency, FrontDamping, 0.11, 11.3);
            var (rearRoad, rearBody) = Axle(s, 1.0 - FrontShare, RearFrequency, RearDamping, 0.09, 11.6);
            var late = Complex.Exp(-s * wheelbase / speed);
            var heave = (s * s) + frontBody + rearBody;
            var cross = (-b * frontBody) + (c * rearBody);
            var pitch = (Index * b * c * s * s) + (b * b * frontBody) + (c * c * rearBody) - (9.81 * HeightOverAxis);
            var up = frontRoad + (rearRoad * late);
            var turn = (-b * frontRoad) + (c * rearRoad * late);
            return s * ((heave * turn) - (cross * up)) / ((heave * pitch) - (cross * cross));
        }

        private static (Complex Road, Complex Body) Axle(Complex s, double mass, double frequency, double damping, double unsprung, double hop)
        {
            var w = 2.0 * Math.PI * frequency;
            var suspension = mass * ((w * w) + (2.0 * damping * w * s));
            var wheel = unsprung * mass;
            var tyre = wheel * Math.Pow(2.0 * Math.PI * hop, 2.0);
            var all = (wheel * s * s) + suspension + tyre;
            return (suspension * tyre / all, suspension * ((wheel * s * s) + tyre) / all);
        }
    }
}
