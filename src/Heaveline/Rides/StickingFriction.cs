using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Rides;

/// <summary>
/// Where friction is too large for the motion: it sticks, and the equivalent linearisation, which knows it as a slider alone, tells too little
/// travel.
/// </summary>
internal static class StickingFriction
{
    /// <summary>What kind of caution it is.</summary>
    public const string Id = "sticking-friction";

    /// <summary>
    /// Friction over the damper's RMS force at the wheel (–) past which travel is told to be too small. Our own choice, from passes in time of a
    /// saloon with 50 to 300 N on classes A, B (30, 100 km/h) and C (30): travel is within 5 % up to 1.3 times, 5 to 13 % too small at twice, a third
    /// at six times.
    /// </summary>
    public const double LargestRatio = 2.0;

    /// <summary>The caution; none where friction slides.</summary>
    public static IEnumerable<RandomCaution> Of(RandomResponse response)
    {
        var model = response.Model;
        var past = (from axle in new[] { AxleEnd.Front, AxleEnd.Rear }
                    let wheel = Enumerable.Range(2 * (int)axle, 2).MaxBy(i => Ratio(response, i))
                    let ratio = Ratio(response, wheel)
                    where ratio > LargestRatio
                    let friction = Numeral.Of(model.Car.Axles[(int)axle].Friction.HalfWidth.Si, 0)
                    select $"{CornerNames.Of(axle)} {friction} N, {Numeral.Of(ratio, 1)} times").ToList();
        if (past.Count > 0)
        {
            yield return new RandomCaution(
                Id,
                $"Friction is more than {Numeral.Of(LargestRatio, 0)} times the dampers' force (root mean square) at the wheels: "
                + $"{string.Join("; ", past)}. So small a motion sticks, and this method knows friction as sliding alone: "
                + "it tells too little travel and may tell too much acceleration. Drive it in time.");
        }
    }

    // Against the damper's force as the straight line has it.
    private static double Ratio(RandomResponse response, int wheel)
    {
        var (model, elements) = (response.Model, response.Model.Numbers.Elements);
        if (elements.Frictions[wheel]?.Slider is not { } slider)
        {
            return 0.0;
        }

        var (travel, speed) = (response.Rms(RideSignal.Travel(model, wheel)), response.Rms(RideSignal.TravelRate(model, wheel)));
        var damping = elements.Dampers[wheel].Mean(model.Numbers.TrimTravel[wheel] + response.MeanTravel(wheel), travel, speed, []).Damping;
        return slider.Force / (damping * speed);
    }
}
