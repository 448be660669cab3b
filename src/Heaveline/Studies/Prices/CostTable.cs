using Heaveline.Answers;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>Static side effects, a column a car.</summary>
public static class CostTable
{
    /// <summary>The rows that cars have between them.</summary>
    public static IReadOnlyList<(Shown Row, StaticOutput Output)> Rows(IReadOnlyList<CarAtRest> cars)
    {
        List<(Shown Row, StaticOutput Output)> rows =
        [
            (new("roll-stiffness", "roll stiffness, tyres included", "N m/°", "F0", 1.0 / Shown.Degrees), SideOutput.RollStiffness),
            (new("roll-front-share", "its front share", "%", "F1", 100.0), SideOutput.RollFrontShare),
            (new("roll-bar-share", "share of the anti-roll bars", "%", "F1", 100.0), SideOutput.RollBarShare),
            (new("roll-per-g", "roll in a bend, per g", "°", "F2", Shown.Degrees), SideOutput.RollPerG),
            (new("braking-pitch-per-g", "nose-down pitch in braking, per g", "°", "F2", Shown.Degrees), SideOutput.BrakingPitch),
            (new("driving-pitch-per-g", "nose-up pitch in accelerating, per g", "°", "F2", Shown.Degrees), SideOutput.DrivingPitch),
        ];
        var effects = cars.Select(c => c.SideEffects).ToList();
        for (var i = 0; i < effects[0].Wheels.Count; i++)
        {
            var wheel = effects[0].Wheels[i].Wheel;
            var key = wheel.Replace(' ', '-');
            if (i > 0 && effects.All(e => Alike(e, i)))
            {
                continue;
            }

            var name = effects[0].Wheels.Count == 4 && i % 2 == 0 && effects.All(e => Alike(e, i + 1)) ? wheel.Split(' ')[0] : wheel;
            rows.AddRange(
            [
                (new($"{key}-height", $"{name}: height, change from as described", "mm", "F1", 1e3), SideOutput.HeightChange(i)),
                (new($"{key}-sag", $"{name}: sag under the load", "mm", "F1", 1e3), SideOutput.Sag(i)),
                (new($"{key}-bump-left", $"{name}: travel left to the bump stop", "mm", "F0", 1e3), SideOutput.BumpLeft(i)),
                (new($"{key}-droop-left", $"{name}: droop left", "mm", "F0", 1e3), SideOutput.DroopLeft(i)),
                (new($"{key}-stress", $"{name}: spring stress standing", "MPa", "F0", 1e-6), SideOutput.Stress(i)),
                (new($"{key}-stress-bump", $"{name}: spring stress at full bump", "MPa", "F0", 1e-6), SideOutput.StressAtFullBump(i)),
            ]);
        }

        rows.AddRange(
        [
            (new("lamp-drop", "dipped beam drop", "%", "F2", 100.0), SideOutput.LampDrop),
            (new("lamp-road", "cut-off meets the road at", "m", "F0", 1.0), SideOutput.LampMeetsRoad),
            (new("lamp-50", "cut-off height at 50 m", "m", "F2", 1.0), SideOutput.CutOffAt50),
        ]);
        return rows;
    }

    /// <summary>The table.</summary>
    /// <param name="names">Names, a column each.</param>
    /// <param name="cars">The cars at rest under one load.</param>
    /// <param name="rows">The rows.</param>
    public static FactTable Of(IReadOnlyList<string> names, IReadOnlyList<CarAtRest> cars, IReadOnlyList<(Shown Row, StaticOutput Output)> rows)
    {
        var table = new FactTable("Side effects", names);
        foreach (var (row, output) in rows)
        {
            table.Add(row.Key, row.Label, row.Unit, row.Format, cars.Select(c => row.Of(output.Of(c))));
        }

        return table;
    }

    private static bool Alike(SideEffects e, int i) => e.Wheels.Count == 4 && i % 2 == 1
        && Math.Abs(e.Wheels[i].Deflection - e.Wheels[i - 1].Deflection) < 1e-6 && Math.Abs(e.Wheels[i].HeightChange - e.Wheels[i - 1].HeightChange) < 1e-6;
}
