using System.Numerics;
using Heaveline.Numerics;

namespace Heaveline.Drives.Events;

/// <summary>The responses of all usual cars at the frequencies of a window, made once for a drive.</summary>
internal sealed class UsualResponses
{
    /// <summary>The first bin that is looked at: slower motion is not the bump's.</summary>
    public const int FirstBin = 2;

    private readonly (Complex FrontVertical, Complex FrontRate, Complex RearVertical, Complex RearRate)[] responses;

    /// <summary>For a drive, a wheelbase and the phone's place.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="wheelbase">Wheelbase, m.</param>
    /// <param name="behind">The phone behind the front axle, m.</param>
    public UsualResponses(Drive drive, double wheelbase, double behind)
    {
        var rate = drive.Rate;
        (Samples, Bins) = OnsetTable.SizeOf(rate);
        Wheelbase = wheelbase;
        Turns = new FourierTurns(Samples);
        Frequencies = [.. Enumerable.Range(FirstBin, Bins).Select(k => k * rate / Samples)];
        responses = [.. UsualCar.All.SelectMany(c => Frequencies.Select(f => c.At(f, wheelbase, behind)))];
        VerticalWeights = Weights(drive, drive.Vertical.AsSpan(), k => Smooth(k, r => (r.FrontVertical, r.RearVertical)));
        RateWeights = Weights(drive, drive.PitchRate.AsSpan(), k => Smooth(k, r => (r.FrontRate, r.RearRate)));
    }

    /// <summary>One over the usual power of the vertical acceleration at each frequency, s²/m² a window; empty without one.</summary>
    public double[] VerticalWeights { get; }

    /// <summary>The same of the pitch rate.</summary>
    public double[] RateWeights { get; }

    /// <summary>Samples of a window.</summary>
    public int Samples { get; }

    /// <summary>Frequencies of a window.</summary>
    public int Bins { get; }

    /// <summary>What the windows' transforms have in common.</summary>
    public FourierTurns Turns { get; }

    /// <summary>They themselves, Hz.</summary>
    public double[] Frequencies { get; }

    /// <summary>Wheelbase, m.</summary>
    public double Wheelbase { get; }

    /// <summary>How many cars.</summary>
    public int Count => UsualCar.All.Count;

    /// <summary>A car's response at a frequency of the window.</summary>
    public (Complex FrontVertical, Complex FrontRate, Complex RearVertical, Complex RearRate) At(int car, int bin) => responses[(car * Bins) + bin];

    // One over the median power of windows along the drive: a rough road counts where it shakes most, a bump where it stands out.
    private double[] Weights(Drive drive, ReadOnlySpan<double> signal, Func<int, double> smooth)
    {
        const int most = 300;
        const int fewest = 5;
        var every = Math.Max(Samples / 2, drive.Vertical.Length / most);
        var powers = new List<double[]>();
        foreach (var (first, last) in signal.IsEmpty ? [] : drive.Covered)
        {
            for (var from = first; from + Samples <= last; from += every)
            {
                if (drive.Speed.IsEmpty || drive.Speed[from + (Samples / 2)] >= EventFinder.Creeping)
                {
                    powers.Add([.. OnsetTable.Spectrum(signal, from, Turns, Samples, drive.Rate, Bins)
                        .Select(y => (y.Real * y.Real) + (y.Imaginary * y.Imaginary))]);
                }
            }
        }

        double[] medians = [.. Enumerable.Range(0, Bins).Select(
            k => powers.Count < fewest ? 0.0 : Middle.Of([.. powers.Select(p => p[k])]))];
        return [.. Enumerable.Range(0, Bins).Select(k => 1.0 / (medians[Math.Max(0, k - 2)..Math.Min(Bins, k + 3)].Average() + smooth(k)))];
    }

    // The power of a window on a smooth road (4e-6 m³ at 0.1 cycles a metre, 8 m/s), the mean of all cars: no road is smoother.
    private double Smooth(
        int bin, Func<(Complex FrontVertical, Complex FrontRate, Complex RearVertical, Complex RearRate), (Complex Front, Complex Rear)> of)
    {
        const double density = 4e-6 * 0.01 * 8.0;
        var sum = 0.0;
        for (var car = 0; car < Count; car++)
        {
            var (front, rear) = of(At(car, bin));
            sum += ((front.Magnitude * front.Magnitude) + (rear.Magnitude * rear.Magnitude)) / Count;
        }

        return 0.5 * OnsetTable.Window * density * sum / (Frequencies[bin] * Frequencies[bin]);
    }
}
