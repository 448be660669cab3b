using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>
/// What a design evaluation needs of road, speed and weighting, four frequencies in a step. Halves of sum and difference of the two tracks have
/// nothing to do with each other, so their powers stand apart: at the front, at the rear, and front against rear.
/// </summary>
internal sealed class SpectrumTable
{
    public const int Lanes = 4;

    private const int Widest = 8;

    /// <summary>ω, rad/s, and its square.</summary>
    public const int Omega = 0;
    public const int Square = 1;

    /// <summary>e^{−iωL/V}.</summary>
    public const int Cosine = 2;
    public const int Sine = 3;

    /// <summary>Powers of both tracks together: front, rear, twice the front with the rear.</summary>
    public const int TogetherFront = 4;
    public const int TogetherRear = 5;
    public const int TogetherBoth = 6;

    /// <summary>Powers of the tracks against each other.</summary>
    public const int AgainstFront = 7;
    public const int AgainstRear = 8;
    public const int AgainstBoth = 9;

    private const int Columns = 10;

    private readonly Vector256<double>[] steps;

    // In memory that does not move, from a whole cache line on: a register that lies across two is read twice.
    private readonly double[] wide;
    private readonly int begin;
    private readonly int widths;

    /// <param name="road">The road.</param>
    /// <param name="like">The car whose wheelbase, wheel places and contact lengths count.</param>
    /// <param name="contact">Contact lengths front and rear, m.</param>
    /// <param name="tracks">Two tracks for both axles, or null: each wheel's own track of an isotropic surface.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="frequencies">Frequencies, Hz, shape (n), n a multiple of 4.</param>
    /// <param name="powers">Weight of the squared signal per position at each frequency, shape (n): factor squared, derivatives and width.</param>
    public SpectrumTable(
        RoadSpectrum road,
        in SymmetricRide like,
        (double Front, double Rear) contact,
        TrackCoherence? tracks,
        double speed,
        double[] frequencies,
        double[] powers)
    {
        var count = frequencies.Length;
        var gamma = new Coherences(road, like, tracks);
        var delay = (like.Front.X - like.Rear.X) / speed;
        double[] Column(Func<int, double> of) => [.. Enumerable.Range(0, count).Select(of)];
        double Power(int k) => powers[k] * road.HeightsAt(frequencies[k], speed);
        double Front(int k) => WheelWaves.Sinc(Math.PI * frequencies[k] / speed * contact.Front);
        double Rear(int k) => WheelWaves.Sinc(Math.PI * frequencies[k] / speed * contact.Rear);
        Count = count / Lanes;
        double[][] columns =
        [
            Column(k => 2.0 * Math.PI * frequencies[k]),
            Column(k => 4.0 * Math.PI * Math.PI * frequencies[k] * frequencies[k]),
            Column(k => Math.Cos(2.0 * Math.PI * frequencies[k] * delay)),
            Column(k => -Math.Sin(2.0 * Math.PI * frequencies[k] * delay)),
            Column(k => Power(k) * Front(k) * Front(k) * gamma.At(frequencies[k] / speed).TogetherFront),
            Column(k => Power(k) * Rear(k) * Rear(k) * gamma.At(frequencies[k] / speed).TogetherRear),
            Column(k => 2.0 * Power(k) * Front(k) * Rear(k) * gamma.At(frequencies[k] / speed).TogetherBoth),
            Column(k => Power(k) * Front(k) * Front(k) * gamma.At(frequencies[k] / speed).AgainstFront),
            Column(k => Power(k) * Rear(k) * Rear(k) * gamma.At(frequencies[k] / speed).AgainstRear),
            Column(k => 2.0 * Power(k) * Front(k) * Rear(k) * gamma.At(frequencies[k] / speed).AgainstBoth),
        ];
        // Past the last frequency it stands again, without power.
        double At(int column, int k) => k < count ? columns[column][k] : column < TogetherFront ? columns[column][count - 1] : 0.0;
        widths = (count + Widest - 1) / Widest;
        wide = GC.AllocateUninitializedArray<double>((widths * Columns * Widest) + Widest, pinned: true);
        begin = Aligned(wide);
        for (var i = 0; i < widths * Columns * Widest; i++)
        {
            var (q, column, k) = (i / (Columns * Widest), i / Widest % Columns, i % Widest);
            wide[begin + i] = At(column, (Widest * q) + k);
        }

        steps = [.. Enumerable.Range(0, Count).SelectMany(q => columns.Select(c => Vector256.Create(c.AsSpan(Lanes * q, Lanes))))];
    }

    /// <summary>Number of steps.</summary>
    public int Count { get; }

    /// <summary>The numbers of one step, in the order of the constants: together in memory, as they are read together.</summary>
    public ReadOnlySpan<Vector256<double>> this[int step] => steps.AsSpan(Columns * step, Columns);

    /// <summary>Number of steps in a register of so many places, 4 or 8.</summary>
    public int Steps<T>()
        where T : unmanaged, ILane<T> => T.Count == Lanes ? Count : widths;

    /// <summary>The numbers of one such step.</summary>
    public ReadOnlySpan<T> Step<T>(int step)
        where T : unmanaged, ILane<T> => T.Count == Lanes
        ? MemoryMarshal.Cast<Vector256<double>, T>(this[step])
        : MemoryMarshal.Cast<double, T>(wide.AsSpan(begin + (Widest * Columns * step), Widest * Columns));

    // The first place in pinned memory at which a cache line begins.
    private static unsafe int Aligned(double[] pinned)
    {
        fixed (double* first = pinned)
        {
            var beyond = (int)((nuint)first / sizeof(double) % Widest);
            return (Widest - beyond) % Widest;
        }
    }

    private readonly record struct Shares(
        double TogetherFront, double TogetherRear, double TogetherBoth, double AgainstFront, double AgainstRear, double AgainstBoth);

    // Density of (left ± right)/2 is G·(γ of the same side ± γ of the other side)/2.
    private sealed class Coherences(RoadSpectrum road, SymmetricRide like, TrackCoherence? tracks)
    {
        private readonly Dictionary<double, Shares> known = [];

        public Shares At(double n)
        {
            if (!known.TryGetValue(n, out var shares))
            {
                var (f, r) = (Math.Abs(like.Front.Y), Math.Abs(like.Rear.Y));
                double Gamma(double apart) => apart == 0.0 ? 1.0 : new TrackCoherence { Track = new(apart), Waviness = road.Waviness }.At(n);
                var across = tracks?.At(n);
                var (front, rear) = (across ?? Gamma(2.0 * f), across ?? Gamma(2.0 * r));
                var (same, other) = (tracks is null ? Gamma(Math.Abs(f - r)) : 1.0, across ?? Gamma(f + r));
                shares = new(
                    0.5 * (1.0 + front), 0.5 * (1.0 + rear), 0.5 * (same + other), 0.5 * (1.0 - front), 0.5 * (1.0 - rear), 0.5 * (same - other));
                known[n] = shares;
            }

            return shares;
        }
    }
}
