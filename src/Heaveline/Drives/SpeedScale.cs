using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>How the speed that a log says stands to the speed that the delay between its axles tells, over all passes of a drive.</summary>
/// <param name="Log">Logarithm of the log's speed over the speed by the axles: 0.05 is a record that is 5 % high.</param>
/// <param name="Deviation">Standard deviation of that: by what the fit leaves open, more where passes scatter by more.</param>
public sealed record SpeedScale(double Log, double Deviation)
{
    // Apart by less than this a record stands; proposals of this program, tried on planted drives.
    private const double Least = 0.02;
    private const double Most = 0.25;

    // Beside what the fit leaves open: by so much more twelve planted records were off their scale, half of it one way.
    private const double Doubt = 0.009;

    // Fewer windows tell no scatter.
    private const int Fewest = 4;

    // A window that the record itself decides tells nothing about it.
    private const double Own = 0.8;

    /// <summary>The log's speed over the true one.</summary>
    public double Factor => Math.Exp(Log);

    /// <summary>Half-width of the 90 % interval of <see cref="Log"/>.</summary>
    public double HalfWidth => Gaussian.Ninety * Deviation;

    /// <summary>How far off, as a share, a record must be to be noticed by these passes.</summary>
    public double Noticed => Math.Max(Least, HalfWidth);

    /// <summary>Whether the record is off by more than 2 % and more than its own doubt, and by no more than can be set right.</summary>
    public bool IsTold => Math.Abs(Log) > Noticed && Math.Abs(Log) < Most;

    /// <summary>That the record was scaled, and by what.</summary>
    public string Said => Text(
        $"The log's speed is {100.0 * Math.Abs(Factor - 1.0):F0} % {(Log > 0.0 ? "high" : "low")} by the delay between the axles (± ")
        + Text($"{100.0 * HalfWidth:F1} %): it was scaled. A wrong wheelbase looks the same.");

    /// <summary>Reads it off the windows that a car was fitted to; null where they do not tell it.</summary>
    /// <param name="car">The car.</param>
    /// <param name="events">The bumps that it was fitted to, at the speed of the log.</param>
    public static SpeedScale? Of(CarFromDrive car, DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(events);
        if (!events.HasSpeed)
        {
            return null;
        }

        var all = new SpeedRecords(car);
        return all.Told(Own) < Fewest || all.Scale() is not var (log, variance) || !(variance > 0.0)
            ? null
            : new SpeedScale(log, Math.Sqrt(variance + (Doubt * Doubt)));
    }
}
