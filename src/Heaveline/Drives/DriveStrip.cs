using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Heaveline.Drives;

/// <summary>A drive at a glance: how hard the floor is knocked and how the body swings, sample by sample.</summary>
public sealed record DriveStrip
{
    private const double KnockWindow = 0.12;
    private const double SwingWindow = 0.4;

    /// <summary>RMS over 0.12 s of the vertical acceleration between 2 and 15 Hz, m/s², shape (n); 0 where the drive is not covered.</summary>
    public required ImmutableArray<double> Knock { get; init; }

    /// <summary>RMS over 0.4 s of the pitch rate between 0.7 and 6 Hz, rad/s, shape (n); empty where there is no pitch.</summary>
    public required ImmutableArray<double> Swing { get; init; }

    /// <summary>The strip of a drive.</summary>
    /// <param name="drive">The drive.</param>
    public static DriveStrip Of(Drive drive)
    {
        ArgumentNullException.ThrowIfNull(drive);
        return new DriveStrip
        {
            Knock = Rms(drive, drive.Vertical, 2.0, 15.0, KnockWindow),
            Swing = drive.PitchRate.IsEmpty ? [] : Rms(drive, drive.PitchRate, 0.7, 6.0, SwingWindow),
        };
    }

    /// <summary>The knock of a signal without gaps, m/s², shape (n).</summary>
    /// <param name="vertical">Vertical acceleration of the floor, m/s², shape (n).</param>
    /// <param name="rate">Samples a second, Hz.</param>
    internal static double[] KnockOf(ReadOnlySpan<double> vertical, double rate) => Rms(vertical, rate, 2.0, 15.0, KnockWindow);

    /// <summary>The swing of a signal without gaps, rad/s, shape (n).</summary>
    /// <param name="pitchRate">Pitch rate, rad/s, shape (n).</param>
    /// <param name="rate">Samples a second, Hz.</param>
    internal static double[] SwingOf(ReadOnlySpan<double> pitchRate, double rate) => Rms(pitchRate, rate, 0.7, 6.0, SwingWindow);

    private static ImmutableArray<double> Rms(Drive drive, ImmutableArray<double> signal, double low, double high, double window)
    {
        var result = new double[signal.Length];
        foreach (var (first, last) in drive.Covered)
        {
            Rms(signal.AsSpan()[first..(last + 1)], drive.Rate, low, high, window).CopyTo(result, first);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(result);
    }

    private static double[] Rms(ReadOnlySpan<double> signal, double rate, double low, double high, double window)
    {
        var reach = Math.Max(1, (int)Math.Round(0.5 * window * rate));
        var band = ZeroPhase.Band(signal, rate, low, Math.Min(high, 0.45 * rate));
        var sums = new double[band.Length + 1];
        for (var i = 0; i < band.Length; i++)
        {
            sums[i + 1] = sums[i] + (band[i] * band[i]);
        }

        for (var i = 0; i < band.Length; i++)
        {
            var (from, to) = (Math.Max(i - reach, 0), Math.Min(i + reach + 1, band.Length));
            band[i] = Math.Sqrt(Math.Max(sums[to] - sums[from], 0.0) / (to - from));
        }

        return band;
    }
}
