using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>Where on a road the obstacle lies.</summary>
public readonly record struct RoadEvent
{
    /// <summary>Makes the event.</summary>
    /// <param name="start">Where it begins, m, finite.</param>
    /// <param name="end">Where it ends, m, not before its start.</param>
    public RoadEvent(double start, double end)
    {
        Start = Checked.Within(start, -double.MaxValue, double.MaxValue, "Give a finite distance.", "EventStart");
        End = Checked.Within(end, start, double.MaxValue, "End the event at its start or after it.", "EventEnd");
    }

    /// <summary>Where it begins, m.</summary>
    public double Start { get; }

    /// <summary>Where it ends, m; its start for a sharp step.</summary>
    public double End { get; }
}
