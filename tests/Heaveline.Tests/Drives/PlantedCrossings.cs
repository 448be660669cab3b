using System.Collections.Immutable;
using System.Numerics;
using Heaveline.Drives;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;

namespace Heaveline.Tests.Drives;

/// <summary>
/// Passes of a planted car over one hump on a rough road, as a phone with its faults logs them: gains 1 % off, a bias, noise, uneven stamps, the
/// engine's hum, steps of 5 mg, a speed that drifts. All from one seed.
/// </summary>
internal sealed record PlantedCrossings
{
    private const double Step = 0.0025;
    private const double Grid = 0.02;

    private ulong drawn;

    public ulong Seed { get; init; } = 1;

    public double[] Speeds { get; init; } = [4.2, 6.5, 9.5];

    public int Each { get; init; } = 4;

    /// <summary>Displacement density at 0.1 cycles/m, one-sided, m³; null: one of half of class A, B and in between.</summary>
    public double? Roughness { get; init; }

    /// <summary>Height and length of the hump, m; null: rough road alone.</summary>
    public (double Height, double Length)? Hump { get; init; } = (0.075, 3.7);

    /// <summary>Whether the hump is a half cosine wave rather than an arc.</summary>
    public bool IsSmooth { get; init; }

    public double Rate { get; init; } = 100.0;

    public double Jitter { get; init; } = 1e-3;

    public double Engine { get; init; } = 0.15;

    /// <summary>Spread of the change of speed from pass to pass, over the speed, 1/s.</summary>
    public double Drift { get; init; } = 0.02;

    public double SpeedSpread { get; init; } = 0.03;

    public double SpeedError { get; init; } = 0.02;

    public double ShareSpread { get; init; } = 0.01;

    public double PhoneSpread { get; init; } = 0.05;

    public Func<LinearCar, LinearCar> Car { get; init; } = c => c;

    /// <summary>What is done to each pass's vertical acceleration and pitch rate on an even grid of 400 Hz, before the phone.</summary>
    public Action<double[], double[]>? Mount { get; init; }

    /// <summary>The car, what is known of it, and the windows.</summary>
    public (LinearCar Car, IdentificationKnown Known, DriveWindow[] Windows) Drawn()
    {
        drawn = 0;
        var front = Between(1.0, 1.6);
        var car = Car(new LinearCar
        {
            FrontFrequency = front,
            RearFrequency = front * Between(0.9, 1.3),
            FrontDamping = Between(0.15, 0.42),
            RearDamping = Between(0.15, 0.42),
            PitchIndex = Math.Clamp(1.0 + (0.08 * Normal()), 0.8, 1.25),
            FrontShare = Math.Clamp(0.55 + (0.04 * Normal()), 0.45, 0.63),
            PhoneBehindFrontAxle = Between(0.9, 1.9),
            FrontUnsprung = Between(0.10, 0.17),
            RearUnsprung = Between(0.10, 0.17),
            FrontHop = Between(9.8, 12.0),
            RearHop = Between(9.8, 12.0),
            Wheelbase = Between(2.3, 2.9),
        });
        var classes = (double[])[8e-6, 32e-6, 64e-6];
        var rough = Roughness ?? classes[(int)(3.0 * Uniform())];
        var gains = (1.0 + (0.01 * Normal()), 1.0 + (0.01 * Normal()));
        var windows = new List<DriveWindow>();
        foreach (var speed in Speeds)
        {
            for (var k = 0; k < Each; k++)
            {
                windows.Add(Pass(car, speed * (1.0 + (0.05 * Normal())), rough, gains, windows.Count + 1));
            }
        }

        var lengths = ImmutableDictionary<string, double>.Empty;
        return (car, new IdentificationKnown
        {
            Wheelbase = car.Wheelbase,
            FrontShare = car.FrontShare + (ShareSpread * Normal()),
            FrontShareSpread = ShareSpread,
            PhoneBehindFrontAxle = car.PhoneBehindFrontAxle + (PhoneSpread * Normal()),
            PhoneSpread = PhoneSpread,
            HumpLengths = Hump is { } hump ? lengths.Add("A", hump.Length * (1.0 + (0.03 * Normal()))) : lengths,
        }, [.. windows]);
    }

    private DriveWindow Pass(LinearCar car, double speed, double rough, (double Vertical, double Pitch) gains, int number)
    {
        const double lead = 12.0, tail = 6.0, kept = 3.0;
        var drift = Drift * Normal();
        var n = (int)((lead + tail) / Step);
        var x = new double[n];
        for (var i = 1; i < n; i++)
        {
            var t = -lead + (i * Step);
            x[i] = x[i - 1] + (speed * (1.0 + (drift * Math.Clamp(t, -3.0, 4.0))) * Step);
        }

        var zero = x[(int)(lead / Step)];
        var road = Road(x[^1] + car.Wheelbase + 2.0, rough);
        // The road lies from a wheelbase and a metre behind the start on; the hump begins where the front axle is at t = 0.
        double At(double place)
        {
            var at = (place + car.Wheelbase + 1.0) / Grid;
            var k = Math.Min((int)at, road.Length - 2);
            return road[k] + ((at - k) * (road[k + 1] - road[k])) + Height(place - zero);
        }

        var (vertical, pitch) = new PlantedHalfCar(car, Step).Over([.. x.Select(At)], [.. x.Select(p => At(p - car.Wheelbase))]);
        var first = (int)((lead - kept) / Step);
        (vertical, pitch) = (vertical[first..], pitch[first..]);
        Mount?.Invoke(vertical, pitch);
        return Logged(vertical, pitch, kept, speed, gains, number);
    }

    // What the phone writes, brought to an even grid as any log is, and cut about the guessed onset.
    private DriveWindow Logged(
        double[] vertical, double[] pitch, double kept, double speed, (double Vertical, double Pitch) gains, int number)
    {
        var count = (int)(((vertical.Length * Step) - 0.1) * Rate);
        var (start, hum, phase, biasA, biasQ) = (Uniform(), Between(22.0, 45.0), 2.0 * Math.PI * Uniform(), 0.2 * Normal(), 0.003 * Normal());
        var (times, a, q) = (new double[count], new double[count], new double[count]);
        for (var i = 0; i < count; i++)
        {
            var t = ((i + start) / Rate) + (Jitter * Math.Clamp(Normal(), -3.0, 3.0));
            times[i] = i > 0 ? Math.Max(t, times[i - 1] + 1e-5) : Math.Max(t, 0.0);
            var felt = Line(vertical, times[i]) + (Engine * Math.Sin((2.0 * Math.PI * hum * times[i]) + phase));
            a[i] = Math.Round(((gains.Vertical * felt) + (0.05 * Normal()) + biasA) / 0.0048) * 0.0048;
            q[i] = (gains.Pitch * Line(pitch, times[i])) + (0.004 * Normal()) + biasQ;
        }

        var track = TimedTrack.Of(PlantedDrive.Track(SensorKind.Acceleration, times, [a, q]))!;
        var grid = EvenGrid.Over(track);
        var columns = grid.Read(track);
        var (evenA, evenQ) = (columns[0], columns[1]);
        var onset = kept + (0.05 * Normal());
        var from = (int)Math.Round((onset - 1.0 - grid.Start) * grid.Rate);
        var length = (int)Math.Round(5.0 * grid.Rate);
        return new DriveWindow
        {
            Rate = grid.Rate,
            Vertical = [.. evenA[from..(from + length)]],
            PitchRate = [.. evenQ[from..(from + length)]],
            Before = Hump is null ? 0.0 : onset - grid.Time(from),
            Speed = speed * (1.0 + (SpeedError * Normal())),
            SpeedSpread = SpeedSpread,
            Site = Hump is null ? null : "A",
            Event = number,
        };
    }

    private static double Line(double[] values, double time)
    {
        var at = time / Step;
        var k = Math.Clamp((int)at, 0, values.Length - 2);
        return values[k] + ((at - k) * (values[k + 1] - values[k]));
    }

    private double Height(double x)
    {
        if (Hump is not { } hump || x <= 0.0 || x >= hump.Length)
        {
            return 0.0;
        }

        var radius = ((0.25 * hump.Length * hump.Length) + (hump.Height * hump.Height)) / (2.0 * hump.Height);
        var across = x - (0.5 * hump.Length);
        return IsSmooth
            ? 0.5 * hump.Height * (1.0 - Math.Cos(2.0 * Math.PI * x / hump.Length))
            : Math.Sqrt((radius * radius) - (across * across)) - (radius - hump.Height);
    }

    // Random heights on a closed lap of displacement density G·(n/0.1)^−2, one-sided, from 0.02 cycles/m on, at equal steps.
    private double[] Road(double length, double rough)
    {
        var n = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Ceiling(length / Grid));
        var (whole, spectrum) = (n * Grid, new Complex[n]);
        for (var k = 1; k < n / 2; k++)
        {
            var wave = k / whole;
            var phase = 2.0 * Math.PI * Uniform();
            if (wave >= 0.02)
            {
                spectrum[k] = Complex.FromPolarCoordinates(Math.Sqrt(0.5 * rough / whole) * 0.1 / wave, phase);
                spectrum[n - k] = Complex.Conjugate(spectrum[k]);
            }
        }

        MathNet.Numerics.IntegralTransforms.Fourier.Inverse(spectrum, MathNet.Numerics.IntegralTransforms.FourierOptions.NoScaling);
        return [.. spectrum.Select(z => z.Real)];
    }

    private double Uniform() => SplitMix.Uniform(Seed * 7919UL, drawn++);

    private double Normal()
    {
        drawn += 2;
        return SplitMix.Normals(Seed * 7919UL, drawn - 2).First;
    }

    private double Between(double low, double high) => low + ((high - low) * Uniform());
}
