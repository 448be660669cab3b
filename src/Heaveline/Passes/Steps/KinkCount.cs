using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>How many kinks of each kind follow an axle's block, and whether its wheels sit on one solid axle.</summary>
internal readonly record struct KinkCount(int Dampers, int Above, int Below, bool Solid)
{
    /// <summary>Room for those of one more corner too.</summary>
    public KinkCount And(KernelSlots car, int corner)
    {
        var folded = new FoldedCorner<ScalarLane>(car, corner, TrimNumbers.Of(car.Numbers));
        var (above, below) = (0, 0);
        for (var k = 0; k < FoldedCorner<ScalarLane>.OverTravel; k++)
        {
            var (law, _) = folded.Travelled(k);
            above += law.Opens.Length;
            below += law.Closes.Length;
        }

        return this with
        {
            Dampers = Math.Max(Dampers, folded.DamperHinges.Length),
            Above = Math.Max(Above, above),
            Below = Math.Max(Below, below),
        };
    }
}
