using Heaveline.Cli.Output;
using Heaveline.Measures;

namespace Heaveline.Cli.Commands;

/// <summary>Static side effects, a column a car.</summary>
internal static class CostTable
{
    private const double Degrees = 180.0 / Math.PI;

    public static FactTable Of(IReadOnlyList<string> cars, IReadOnlyList<SideEffects> effects)
    {
        IEnumerable<double?> All(Func<SideEffects, double?> of) => effects.Select(of);
        var table = new FactTable("Side effects", cars)
            .Add("roll-stiffness", "roll stiffness, tyres included", "N m/°", "F0", All(e => e.Roll?.WithTyres / Degrees))
            .Add("roll-front-share", "its front share", "%", "F1", All(e => 100.0 * e.Roll?.FrontShareWithTyres))
            .Add("roll-bar-share", "share of the anti-roll bars", "%", "F1", All(e => 100.0 * e.Roll?.BarShare))
            .Add("roll-per-g", "roll in a bend, per g", "°", "F2", All(e => Degrees * e.Roll?.AnglePerG))
            .Add("braking-pitch-per-g", "nose-down pitch in braking, per g", "°", "F2", All(e => Degrees * e.Braking.Angle))
            .Add("driving-pitch-per-g", "nose-up pitch in accelerating, per g", "°", "F2", All(e => -Degrees * e.Driving.Angle));
        for (var i = 0; i < effects[0].Wheels.Count; i++)
        {
            var wheel = effects[0].Wheels[i].Wheel;
            var key = wheel.Replace(' ', '-');
            IEnumerable<double?> At(Func<WheelStanding, double?> of) => effects.Select(e => i < e.Wheels.Count ? of(e.Wheels[i]) : null);
            if (i > 0 && effects.All(e => Alike(e, i)))
            {
                continue;
            }

            var name = effects[0].Wheels.Count == 4 && i % 2 == 0 && effects.All(e => Alike(e, i + 1)) ? wheel.Split(' ')[0] : wheel;
            table
                .Add($"{key}-height", $"{name}: height, change from as described", "mm", "F1", At(w => 1e3 * w.HeightChange))
                .Add($"{key}-sag", $"{name}: sag under the load", "mm", "F1", At(w => 1e3 * w.Sag))
                .Add($"{key}-bump-left", $"{name}: travel left to the bump stop", "mm", "F0", At(w => 1e3 * w.BumpLeft))
                .Add($"{key}-droop-left", $"{name}: droop left", "mm", "F0", At(w => 1e3 * w.DroopLeft))
                .Add($"{key}-stress", $"{name}: spring stress standing", "MPa", "F0", At(w => w.Stress?.AtTrim / 1e6))
                .Add($"{key}-stress-bump", $"{name}: spring stress at full bump", "MPa", "F0", At(w => w.Stress?.AtFullBump / 1e6));
        }

        return table
            .Add("lamp-drop", "dipped beam drop", "%", "F2", All(e => 100.0 * e.Headlamp?.Drop))
            .Add("lamp-road", "cut-off meets the road at", "m", "F0", All(e => e.Headlamp?.MeetsRoad))
            .Add("lamp-50", "cut-off height at 50 m", "m", "F2", All(e => e.Headlamp?.CutOffHeight(50.0)));
    }

    private static bool Alike(SideEffects e, int i) => e.Wheels.Count == 4 && i % 2 == 1
        && Math.Abs(e.Wheels[i].Deflection - e.Wheels[i - 1].Deflection) < 1e-6 && Math.Abs(e.Wheels[i].HeightChange - e.Wheels[i - 1].HeightChange) < 1e-6;
}
