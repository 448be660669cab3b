using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Worksheets;

namespace Heaveline.Ties;

/// <summary>Swings of one end, counted after it was pushed down and let go, under the load of the passes, dampers on.</summary>
public sealed record AxleSwings
{
    /// <summary>
    /// How far the end's own frequency may lie from that of the axle with the other held, a part of it, half-width: pushing one end also rocks the
    /// other. Common practice, no source.
    /// </summary>
    public const double OtherEnd = 0.03;

    /// <summary>The end that was pushed.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>Whole swings, down and up again. Without a doubt good to a quarter.</summary>
    public required Amount<Plain> Count
    {
        get;
        init => field = Checked.Within(value, 0.5, 1000.0, "Count whole swings, down and up again.", "Swings");
    }

    /// <summary>Time that they took. Without a doubt good to 0.3 s.</summary>
    public required Amount<Time> Time
    {
        get;
        init => field = Checked.Within(value, 0.1, 600.0, "Stop the time from one lowest point to the last.", "SwingTime");
    }

    /// <summary>Frequency counted, Hz, with its doubt.</summary>
    internal Amount<Frequency> Frequency
    {
        get
        {
            var counted = BounceSheet.Of(Count, Time).Frequency;
            return counted.WithDoubt(Math.Sqrt(
                (counted.Doubt.HalfWidth * counted.Doubt.HalfWidth) + (OtherEnd * OtherEnd * counted.Si * counted.Si)));
        }
    }
}
