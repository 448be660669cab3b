using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives.Events;

/// <summary>Why a bump does not count.</summary>
internal sealed class EventDrops
{
    /// <summary>Braking or speeding up harder than this moves the body by itself, m/s².</summary>
    public const double Braking = 2.0;

    /// <summary>Turning harder than this rolls it, m/s².</summary>
    public const double Turning = 1.5;

    // What is slower than this is driving, Hz.
    private const double Driving = 0.7;

    // How far from a gap a bump must lie, s, and how long its settling must be seen.
    private const double Away = 1.5;
    private const double Settling = 1.0;

    private readonly Drive drive;
    private readonly Trust trust;
    private readonly double[] along;
    private readonly double[] across;

    /// <summary>For a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="trust">What it is good for.</param>
    public EventDrops(Drive drive, Trust trust)
    {
        (this.drive, this.trust) = (drive, trust);
        (along, across) = (Slow(drive.Forward.AsSpan()), Slow(drive.Left.AsSpan()));
    }

    /// <summary>The hardest braking or speeding up between two instants, signed, m/s²; 0 where it is not known.</summary>
    public double AlongBetween(double from, double to) => Farthest(along, from, to);

    /// <summary>Why it does not count, a sentence; blank where it does.</summary>
    /// <param name="onset">First touch, s.</param>
    /// <param name="through">When the rear wheels have left, s.</param>
    /// <param name="speed">Speed, m/s; null: not known.</param>
    public string Reason(double onset, double through, double? speed)
    {
        if (drive.Mount.Moves.Any(m => m > onset - Away && m < through + Settling + Away))
        {
            return "The phone moved in its place.";
        }

        foreach (var (part, reason) in trust.Dropped.OrderBy(d => d.Reason == "not covered"))
        {
            var (before, after) = reason == "not covered" ? (Away, Settling) : (0.5, Settling);
            if (part.To > onset - before && part.From < through + after)
            {
                return reason switch
                {
                    "clipped" => "The accelerometer stood at its full scale.",
                    "left the floor" => "The phone left the floor.",
                    _ => "The log has a gap there.",
                };
            }
        }

        if (!drive.Covered.Any(c => drive.Time(c.First) <= onset - Away && drive.Time(c.Last) >= through + Settling))
        {
            return "The log begins or ends there.";
        }

        if (speed < EventFinder.Creeping)
        {
            return "The car stood or crept.";
        }

        var (braking, turning) = (AlongBetween(onset - 0.5, through + Settling), Farthest(across, onset - 0.5, through + Settling));
        return Math.Abs(braking) > Braking ? Text($"The car {(braking < 0.0 ? "braked" : "sped up")} at {Math.Abs(braking):F1} m/s².")
            : Math.Abs(turning) > Turning ? Text($"The car turned at {Math.Abs(turning):F1} m/s².")
            : "";
    }

    private double[] Slow(ReadOnlySpan<double> signal)
    {
        var result = new double[signal.Length];
        if (signal.IsEmpty)
        {
            return result;
        }

        foreach (var (first, last) in drive.Covered)
        {
            ZeroPhase.Low(signal[first..(last + 1)], drive.Rate, Driving).CopyTo(result, first);
        }

        return result;
    }

    private double Farthest(double[] values, double from, double to)
    {
        if (values.Length == 0)
        {
            return 0.0;
        }

        var (first, last) = (
            Math.Max(0, (int)((from - drive.Start) * drive.Rate)), Math.Min(values.Length - 1, (int)((to - drive.Start) * drive.Rate)));
        var most = 0.0;
        for (var i = first; i <= last; i++)
        {
            most = Math.Abs(values[i]) > Math.Abs(most) ? values[i] : most;
        }

        return most;
    }
}
