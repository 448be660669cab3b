using System.Collections.Immutable;

namespace Heaveline.Drives.Identification;

/// <summary>
/// The car as a drive tells it: the linear car that moves most like the log. What it says holds for the motion of the drive: damper speeds about
/// <see cref="TravelSpeed"/>, pitch about <see cref="PitchMotion"/>.
/// </summary>
public sealed record CarFromDrive
{
    /// <summary>Its numbers with their intervals, in the order of <see cref="CarNumber"/>; empty where nothing could be fitted.</summary>
    public ImmutableArray<CarEstimate> Estimates { get; init; } = [];

    /// <summary>By which rules it is not believed, or not all of it.</summary>
    public ImmutableArray<CarRefusal> Refusals { get; init; } = [];

    /// <summary>Whether the numbers that are said may be believed.</summary>
    public bool IsBelieved { get; init; }

    /// <summary>The linear car; null where nothing could be fitted.</summary>
    public LinearCar? Car { get; init; }

    /// <summary>Correlations of the estimates' errors, shape (estimates, estimates), in the order of <see cref="Estimates"/>.</summary>
    public ImmutableArray<ImmutableArray<double>> Correlations { get; init; } = [];

    /// <summary>Root mean square speed of the dampers over the events, front and rear together, m/s.</summary>
    public double TravelSpeed { get; init; }

    /// <summary>Root mean square pitch over the events, rad.</summary>
    public double PitchMotion { get; init; }

    /// <summary>What is left by band.</summary>
    public ImmutableArray<ResidualBand> Residuals { get; init; } = [];

    /// <summary>Mean power of the windows by frequency, measured and of the model.</summary>
    public ImmutableArray<FittedSpectrum> Spectra { get; init; } = [];

    /// <summary>Displacement density of the road at 0.1 cycles/m, one-sided, m³.</summary>
    public double Roughness { get; init; }

    /// <summary>Noise density of the vertical acceleration, one-sided, (m/s²)²/Hz.</summary>
    public double VerticalNoise { get; init; }

    /// <summary>Noise density of the pitch rate, one-sided, (rad/s)²/Hz.</summary>
    public double PitchNoise { get; init; }

    /// <summary>Gain of the gyro over that of the accelerometer.</summary>
    public double GyroGain { get; init; } = 1.0;

    /// <summary>Where the starts ended.</summary>
    public ImmutableArray<CarStart> Starts { get; init; } = [];

    /// <summary>What the fit says of each window, in the order given.</summary>
    public ImmutableArray<FittedWindow> Windows { get; init; } = [];

    /// <summary>By how much the log's speed was off, where it was scaled before the car was fitted; null: it stood as it was logged.</summary>
    public SpeedScale? SpeedScale { get; init; }

    /// <summary>The humps of the sites.</summary>
    public ImmutableArray<RecoveredHump> Humps { get; init; } = [];

    /// <summary>What was known before; null where nothing could be fitted.</summary>
    internal IdentificationKnown? Known { get; init; }

    /// <summary>All parameters at the end of the fit, in the order of <see cref="CarParameter"/>, then humps, then windows.</summary>
    internal ImmutableArray<double> Mean { get; init; } = [];

    /// <summary>Their covariance, shape (n, n), row after row: information's, each deviation raised to the sandwich's where that is larger.</summary>
    internal ImmutableArray<double> Covariance { get; init; } = [];

    /// <summary>The events of the windows, in the order in which these stand among the parameters; 0 for none.</summary>
    internal ImmutableArray<int> Crossed { get; init; } = [];

    /// <summary>
    /// Covariance of the windows' speeds (ln of each over the one said) by information alone, shape (windows, windows), in the order of
    /// <see cref="Crossed"/>.
    /// </summary>
    internal ImmutableArray<double> SpeedCovariance { get; init; } = [];

    /// <summary>How sure each window's speed was before the fit: 1 over the variance of ln of it, in the order of <see cref="Crossed"/>.</summary>
    internal ImmutableArray<double> SpeedPrecision { get; init; } = [];

    /// <summary>ln of each window's speed over the one said, in the order of <see cref="Crossed"/>.</summary>
    internal ImmutableArray<double> SpeedLog { get; init; } = [];

    /// <summary>Each site's splines: where their heights stand among the parameters, and where on them the hump begins, m.</summary>
    internal ImmutableArray<(string Site, int At, HumpSplines Splines, double Begin)> Splines { get; init; } = [];

    /// <summary>Where in <see cref="Mean"/> the passes' own parameters begin: behind those of the car and of all humps.</summary>
    internal int OwnAt => Splines.Select(s => s.At + s.Splines.Count).DefaultIfEmpty(CarParameter.Shared).Max();

    /// <summary>Information that the drive alone gives of the car's parameters, shape (11, 11); null where it could not be worked out.</summary>
    internal double[]? Information { get; init; }

    /// <summary>
    /// By how much of it that information counts for each number, in the order of <see cref="CarNumber"/>: so much that it alone tells the number as
    /// <see cref="Estimates"/> do, whose deviations are the sandwich's where those are larger.
    /// </summary>
    internal ImmutableArray<double> Weights { get; init; } = [];

    /// <summary>The estimate of a number; null where there is none.</summary>
    public CarEstimate? Of(CarNumber number) => Estimates.FirstOrDefault(e => e.Number == number);
}
