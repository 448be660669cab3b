using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// Where a seated person is touched, from the hip point of the seat: rigid points of the body. The seat surface is taken at the hip point, 0.1 m or
/// so above the cushion's. Defaults are common practice for a car seat, no source; give a motorcycle's or a bus's own.
/// </summary>
public sealed record SeatPoints
{
    /// <summary>The usual car seat.</summary>
    public static SeatPoints Default { get; } = new();

    /// <summary>Middle of the backrest above the hip point, m. Default 0.35 m.</summary>
    public Amount<Length> BackrestAbove
    {
        get;
        init => field = Checked.Within(value, 0.0, 1.0, "Give the height of the shoulder blades over the hip.");
    } = new(0.35);

    /// <summary>Middle of the backrest behind the hip point, m. Default 0.1 m.</summary>
    public Amount<Length> BackrestBehind
    {
        get;
        init => field = Checked.Within(value, -0.5, 1.0, "Give how far the back is behind the hip.");
    } = new(0.10);

    /// <summary>Feet ahead of the hip point, m. Default 0.8 m.</summary>
    public Amount<Length> FeetAhead
    {
        get;
        init => field = Checked.Within(value, -1.0, 1.5, "Give how far the feet are ahead of the hip.");
    } = new(0.80);

    /// <summary>Feet below the hip point, m. Default 0.27 m.</summary>
    public Amount<Length> FeetBelow { get; init => field = Checked.Within(value, 0.0, 1.2, "Give how far the feet are below the hip."); } = new(0.27);
}
