using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>A bought spring before it is put in the place of the one that was weighed.</summary>
/// <param name="Law">Its law.</param>
/// <param name="Free">Length without load, m; null when not given.</param>
/// <param name="Block">Length when solid, m; null when not given.</param>
/// <param name="Seat">Packing, m.</param>
/// <param name="Preload">Compression at full droop, m; null when not given.</param>
/// <param name="SeatDiameter">Inside diameter at its ends, m; null: that of the one weighed.</param>
internal sealed record BoughtSpring(
    SpringLaw Law, Amount<Length>? Free, Amount<Length>? Block, Amount<Length> Seat, Amount<Length>? Preload, Amount<Length>? SeatDiameter)
{
    /// <summary>The spring in its place.</summary>
    /// <param name="before">The one that was weighed.</param>
    public Spring InPlaceOf(Spring before) => new()
    {
        Law = Law,
        MotionRatio = before.MotionRatio,
        FreeLength = Free,
        BlockLength = Block,
        SeatDiameter = SeatDiameter ?? before.SeatDiameter,
        Swap = new SpringSwap { Before = before, StandsBy = Law, Seat = Seat, Preload = Preload },
    };
}
