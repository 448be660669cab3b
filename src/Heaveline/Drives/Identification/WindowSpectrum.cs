namespace Heaveline.Drives.Identification;

/// <summary>A window as the likelihood sees it: both channels transformed to the instant of the guessed onset.</summary>
internal sealed class WindowSpectrum
{
    // What the model neglects of a bump's answer, as a share of its amplitude: ends of the window that cut a slow swing, a speed that drifts.
    private const double Neglected = 0.01;

    /// <summary>A window over frequency.</summary>
    /// <param name="grid">Frequencies of windows of its length.</param>
    /// <param name="window">The window; null for one that was never driven.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="hump">Number of its hump; −1 for none.</param>
    /// <param name="limit">Frequencies above it are not compared, Hz.</param>
    public WindowSpectrum(SpectralGrid grid, DriveWindow? window, double speed, int hump, double limit)
    {
        (Grid, Speed, Hump) = (grid, speed, hump);
        var n = grid.Frequencies.Length;
        Used = grid.Frequencies.Count(f => f <= limit);
        Data = new double[4 * n];
        if (window is not null)
        {
            grid.Transform(window.Vertical.AsSpan(), window.Before, Data.AsSpan(0, n), Data.AsSpan(n, n));
            grid.Transform(window.PitchRate.AsSpan(), window.Before, Data.AsSpan(2 * n, n), Data.AsSpan(3 * n, n));
        }

        Doubt = new double[2 * n];
        for (var k = 0; k < n && hump >= 0; k++)
        {
            Doubt[k] = Neglected * Neglected * ((Data[k] * Data[k]) + (Data[n + k] * Data[n + k]));
            Doubt[n + k] = Neglected * Neglected * ((Data[(2 * n) + k] * Data[(2 * n) + k]) + (Data[(3 * n) + k] * Data[(3 * n) + k]));
        }
    }

    /// <summary>Variance of what the model neglects: of the vertical acceleration, then of the pitch rate, shape (2, frequencies).</summary>
    public double[] Doubt { get; }

    /// <summary>Its frequencies.</summary>
    public SpectralGrid Grid { get; }

    /// <summary>Speed as said, m/s.</summary>
    public double Speed { get; }

    /// <summary>Number of its hump; −1 for none.</summary>
    public int Hump { get; }

    /// <summary>How many of the frequencies, from the lowest, are compared.</summary>
    public int Used { get; }

    /// <summary>Real and imaginary parts of the vertical acceleration, then of the pitch rate, shape (4, frequencies).</summary>
    public double[] Data { get; }
}
