using Heaveline.Models;

namespace Heaveline.Measures;

/// <summary>The side effects of a standing car, one by one, to be followed through their doubts and compared between two states of a car.</summary>
public static class SideOutput
{
    /// <summary>Roll stiffness with the tyres in series, N m/rad.</summary>
    public static StaticOutput RollStiffness { get; } = Of("roll stiffness, tyres included", "N m/rad", e => e.Roll?.WithTyres);

    /// <summary>Front axle's share of it (–).</summary>
    public static StaticOutput RollFrontShare { get; } = Of("front share of the roll stiffness", "", e => e.Roll?.FrontShareWithTyres);

    /// <summary>The anti-roll bars' share of the roll stiffness on rigid tyres (–).</summary>
    public static StaticOutput RollBarShare { get; } = Of("share of the anti-roll bars", "", e => e.Roll?.BarShare);

    /// <summary>Roll of the body at one g of steady lateral acceleration, rad.</summary>
    public static StaticOutput RollPerG { get; } = Of("roll per g", "rad", e => e.Roll?.AnglePerG);

    /// <summary>Nose-down pitch at one g of braking, rad.</summary>
    public static StaticOutput BrakingPitch { get; } = Of("nose-down pitch in braking per g", "rad", e => e.Braking.Angle);

    /// <summary>Nose-up pitch at one g of driving, rad.</summary>
    public static StaticOutput DrivingPitch { get; } = Of("nose-up pitch in accelerating per g", "rad", e => -e.Driving.Angle);

    /// <summary>Drop of the dipped beam at trim (–).</summary>
    public static StaticOutput LampDrop { get; } = Of("dipped beam drop", "", e => e.Headlamp?.Drop);

    /// <summary>Where the cut-off meets the road, m; none when it points up.</summary>
    public static StaticOutput LampMeetsRoad { get; } = Of("where the cut-off meets the road", "m", e => e.Headlamp?.MeetsRoad);

    /// <summary>Height of the cut-off 50 m ahead, m.</summary>
    public static StaticOutput CutOffAt50 { get; } = Of("cut-off height at 50 m", "m", e => e.Headlamp?.CutOffHeight(50.0));

    /// <summary>Change of the body's height at a wheel from the reference state, m.</summary>
    /// <param name="wheel">Place in <see cref="SideEffects.Wheels"/>.</param>
    public static StaticOutput HeightChange(int wheel) => At(wheel, "height change", "m", w => w.HeightChange);

    /// <summary>Travel that the load takes up at a wheel, m.</summary>
    /// <param name="wheel">Place in <see cref="SideEffects.Wheels"/>.</param>
    public static StaticOutput Sag(int wheel) => At(wheel, "sag", "m", w => w.Sag);

    /// <summary>Bump travel left at a wheel, m; none without a stop.</summary>
    /// <param name="wheel">Place in <see cref="SideEffects.Wheels"/>.</param>
    public static StaticOutput BumpLeft(int wheel) => At(wheel, "travel left to the bump stop", "m", w => w.BumpLeft);

    /// <summary>Droop left at a wheel, m; none without a stop.</summary>
    /// <param name="wheel">Place in <see cref="SideEffects.Wheels"/>.</param>
    public static StaticOutput DroopLeft(int wheel) => At(wheel, "droop left", "m", w => w.DroopLeft);

    /// <summary>Stress of the spring at a wheel, standing, Pa; none when its dimensions are not known.</summary>
    /// <param name="wheel">Place in <see cref="SideEffects.Wheels"/>.</param>
    public static StaticOutput Stress(int wheel) => At(wheel, "spring stress standing", "Pa", w => w.Stress?.AtTrim);

    /// <summary>The same at full bump, Pa.</summary>
    /// <param name="wheel">Place in <see cref="SideEffects.Wheels"/>.</param>
    public static StaticOutput StressAtFullBump(int wheel) => At(wheel, "spring stress at full bump", "Pa", w => w.Stress?.AtFullBump);

    /// <summary>All of the above that a car has.</summary>
    /// <param name="model">The car as stated, at its trim.</param>
    public static IReadOnlyList<StaticOutput> All(RideModel model)
    {
        var rest = new CarAtRest(model);
        StaticOutput[] all =
        [
            RollStiffness, RollFrontShare, RollBarShare, RollPerG, BrakingPitch, DrivingPitch,
            .. Enumerable.Range(0, rest.SideEffects.Wheels.Count).SelectMany(i => new[] { HeightChange(i), Sag(i), BumpLeft(i), DroopLeft(i), Stress(i), StressAtFullBump(i) }),
            LampDrop, LampMeetsRoad, CutOffAt50,
        ];
        return [.. all.Where(o => double.IsFinite(o.Of(rest)))];
    }

    private static StaticOutput Of(string name, string symbol, Func<SideEffects, double?> of) => new(name, symbol, c => of(c.SideEffects) ?? double.NaN);

    private static StaticOutput At(int wheel, string what, string symbol, Func<WheelStanding, double?> of) =>
        Of($"{what}, wheel {wheel}", symbol, e => wheel < e.Wheels.Count ? of(e.Wheels[wheel]) : null);
}
