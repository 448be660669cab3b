namespace Heaveline.Drives.Identification;

/// <summary>A window as the likelihood sees it: both channels transformed to the instant of the guessed onset.</summary>
internal sealed class WindowSpectrum
{
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
    }

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
