using Heaveline.Quantities;

namespace Heaveline.Rides;

/// <summary>
/// What the distance between two axles does to a road at a speed: a wave of frequency f lifts both axles alike by |cos(πfL/V)| and against each other
/// by |sin(πfL/V)|. Where the first is 0 the road only pitches the car, where the second is 0 it only heaves it [Gillespie,
/// Fundamentals of Vehicle Dynamics, "wheelbase filtering": the name is the book's; the formulas follow from the delay L/V].
/// </summary>
/// <remarks>Seen at the axles. The centre of gravity takes the same nulls where it lies midway and both ends answer alike.</remarks>
public sealed record WheelbaseFilter
{
    /// <summary>L, distance between the axles, m, above 0.</summary>
    public required Amount<Length> Wheelbase { get; init => field = Checked.Positive(value, "Measure from wheel centre to wheel centre."); }

    /// <summary>V, speed, above 0.</summary>
    public required Amount<Velocity> Speed { get; init => field = Checked.Positive(value, "Give a driving speed."); }

    /// <summary>Delay of the rear axle, s: L/V.</summary>
    public double Delay => Wheelbase.Si / Speed.Si;

    /// <summary>Share of the wave that lifts both axles alike (–), 0 to 1.</summary>
    /// <param name="frequency">f, Hz.</param>
    public double HeaveGain(double frequency) => Math.Abs(Math.Cos(Math.PI * frequency * Delay));

    /// <summary>Share of the wave that lifts the axles against each other (–), 0 to 1.</summary>
    /// <param name="frequency">f, Hz.</param>
    public double PitchGain(double frequency) => Math.Abs(Math.Sin(Math.PI * frequency * Delay));

    /// <summary>Frequencies that do not pitch, n·V/L for n = 1, 2 …, Hz, rising.</summary>
    /// <param name="upTo">Highest frequency, Hz.</param>
    public IReadOnlyList<double> PitchNulls(double upTo) => Every(1.0, upTo);

    /// <summary>Frequencies that do not heave, (n − ½)·V/L for n = 1, 2 …, Hz, rising.</summary>
    /// <param name="upTo">Highest frequency, Hz.</param>
    public IReadOnlyList<double> HeaveNulls(double upTo) => Every(0.5, upTo);

    private double[] Every(double first, double upTo)
    {
        var count = Math.Max(0, (int)Math.Floor((upTo * Delay) - first + 1.0));
        return [.. Enumerable.Range(0, count).Select(k => (first + k) / Delay)];
    }
}
