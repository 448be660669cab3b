using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.Tests.Passes;

/// <summary>All signals of a car, for tests that hold for each.</summary>
internal static class EverySignal
{
    public static IReadOnlyList<RideSignal> Of(RideModel model) =>
    [
        RideSignal.Heave, RideSignal.Pitch, RideSignal.HeaveAcceleration, RideSignal.PitchAcceleration,
        RideSignal.VerticalAcceleration(model, 1.7, 0.35), RideSignal.ForeAftForce(0.6),
        .. model.Rolls ? new[] { RideSignal.Roll, RideSignal.RollAcceleration, RideSignal.LateralForce(0.8) } : [],
        .. (model.Rolls ? new[] { 0, 1, 2, 3 } : [0, 2]).SelectMany(i => new[]
        {
            RideSignal.WheelHeight(i), RideSignal.Travel(model, i), RideSignal.TravelRate(model, i), RideSignal.TyreLoad(model, i),
        }),
    ];
}
