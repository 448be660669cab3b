using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>
/// A bounce test: push one end, count the swings, stop the time. The trap: friction that locks the suspension leaves the car bouncing on its tyres,
/// at √(k_t/m)/2π, nearly 4 Hz on a usual car.
/// </summary>
public sealed record BounceSheet
{
    /// <summary>Doubt of a hand-stopped time, s: common practice, no source.</summary>
    public const double HandTiming = 0.3;

    /// <summary>Doubt of a count of swings: a quarter of one; common practice, no source.</summary>
    public const double HandCount = 0.25;

    /// <summary>Frequency, Hz.</summary>
    public required Amount<Frequency> Frequency { get; init; }

    /// <summary>Frequency at which the mass would bounce on its tyres with the suspension locked, Hz; null without mass and tyre rate.</summary>
    public required double? Locked { get; init; }

    /// <summary>Whether the count is more likely of a locked suspension than of a free one.</summary>
    public required bool LooksLocked { get; init; }

    /// <summary>What the test says about itself, one sentence each.</summary>
    public required IReadOnlyList<SheetNote> Notes { get; init; }

    /// <summary>Works the sheet out.</summary>
    /// <param name="cycles">Whole swings, down and up again, counted; a quarter is taken as its doubt when none is stated.</param>
    /// <param name="time">Time they took; 0.3 s is taken as its doubt when none is stated.</param>
    /// <param name="mass">Mass that bounces (a car or the load on an axle); null when not known.</param>
    /// <param name="tyres">Rate of all tyres under it together; null when not known.</param>
    public static BounceSheet Of(Amount<Plain> cycles, Amount<Time> time, Amount<Mass>? mass = null, Amount<Stiffness>? tyres = null)
    {
        Checked.Within(cycles, 0.5, 1000.0, "Count whole swings, down and up again; three or more if the dampers let it.", "Cycles");
        Checked.Within(time, 0.1, 600.0, "Stop the time from one lowest point to the last.", "Time");
        var counted = cycles.Doubt.IsStated ? cycles.Doubt.HalfWidth : HandCount;
        var timed = time.Doubt.IsStated ? time.Doubt.HalfWidth : HandTiming;
        double Hertz(double[] v) => v[0] / v[1];
        double[] inputs = [cycles.Si, time.Si];
        var frequency = new Amount<Frequency>(Hertz(inputs), new Doubt(FrequencyDoubt()));
        double? locked = mass is { } m && tyres is { } k
            ? Math.Sqrt(Checked.Positive(k, "All tyres together.", "TyreRate").Si / Checked.Positive(m, "The mass that bounces.", "Mass").Si)
                / (2.0 * Math.PI)
            : null;
        var looks = frequency.Si > (locked is { } f ? 0.75 * f : 2.8);
        return new BounceSheet { Frequency = frequency, Locked = locked, LooksLocked = looks, Notes = [.. NotesOf(cycles, time, locked, looks)] };

        // First order in both: the time may be as short as its doubt.
        double FrequencyDoubt() => Hertz(inputs) * Math.Sqrt(Math.Pow(counted / cycles.Si, 2) + Math.Pow(timed / time.Si, 2));
    }

    private static IEnumerable<SheetNote> NotesOf(Amount<Plain> cycles, Amount<Time> time, double? locked, bool looks)
    {
        if (looks)
        {
            yield return new("locked", locked is { } f
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"That is near the {f:F1} Hz of the car on its tyres alone: friction locks the suspension. "
                    + $"Push harder, or unhook dampers and bars.")
                : "That is faster than a free road car's body: friction may lock the suspension, so that the car bounces on its tyres. "
                    + "Push harder, or unhook dampers and bars.");
        }

        yield return new(
            "damped",
            "With dampers on, the swings die within one or two and come slower than undamped by √(1 − ζ²): unhook the dampers for a clean count.");
        yield return new("one-end", "Push so that one end only moves up and down: a mix of bounce and pitch beats, and the count is of neither.");
        if (!cycles.Doubt.IsStated || !time.Doubt.IsStated)
        {
            yield return new("hand-doubts",
                FormattableString.Invariant($"Where no doubt was given, ± {HandCount} swing and ± {HandTiming} s by hand are taken."));
        }
    }
}
