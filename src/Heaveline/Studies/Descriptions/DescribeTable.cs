using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;

namespace Heaveline.Studies;

/// <summary>What a car is, load state by load state.</summary>
public static class DescribeTable
{
    private const double PerG = 1.0 / Gravity.Standard;

    /// <summary>The rows of the three tables, title by title.</summary>
    /// <param name="cars">One per load state.</param>
    public static IReadOnlyList<(string Title, IReadOnlyList<(Shown Row, StaticOutput Output)> Rows)> Rows(IReadOnlyList<CarAtRest> cars) =>
        [("Standing", Standing(cars)), ("Axles", Axles()), ("Body", Body())];

    /// <summary>Three tables, a column a load state: standing, axles, body.</summary>
    /// <param name="cars">One per load state.</param>
    public static IReadOnlyList<FactTable> Of(IReadOnlyList<CarAtRest> cars)
    {
        string[] loads = [.. cars.Select(c => c.Model.Load.Name)];
        return [.. Rows(cars).Select(part =>
        {
            var table = new FactTable(part.Title, loads);
            foreach (var (row, output) in part.Rows)
            {
                table.Add(row.Key, row.Label, row.Unit, row.Format, cars.Select(c => row.Of(output.Of(c))));
            }

            return table;
        })];
    }

    // What is nothing in every load state is left out.
    private static List<(Shown Row, StaticOutput Output)> Standing(IReadOnlyList<CarAtRest> cars) =>
    [
        (new("mass", "mass", "kg", "F0", 1.0), RestOutput.Mass),
        (new("front-load", "on the front axle", "kg", "F0", PerG), StaticOutput.FrontLoad),
        (new("rear-load", "on the rear axle", "kg", "F0", PerG), StaticOutput.RearLoad),
        (new("sprung-mass", "sprung mass", "kg", "F0", 1.0), RestOutput.SprungMass),
        (new("centre", "its centre behind the front axle", "mm", "F0", 1e3), RestOutput.Centre),
        (new("front-height", "front height, change", "mm", "F1", 1e3), RestOutput.Height(AxleEnd.Front)),
        (new("rear-height", "rear height, change", "mm", "F1", 1e3), RestOutput.Height(AxleEnd.Rear)),
        (new("attitude", "nose-up attitude", "°", "F2", Shown.Degrees), RestOutput.NoseUp),
        .. cars.Any(c => Math.Abs(c.Model.Trim.Roll) > 1e-6) ? new[] { (new Shown("lean", "lean to the right", "°", "F2", Shown.Degrees), RestOutput.Lean) } : [],
        (new("front-bump-left", "front travel left to the bump stop", "mm", "F0", 1e3), RestOutput.BumpLeft(AxleEnd.Front)),
        (new("rear-bump-left", "rear travel left to the bump stop", "mm", "F0", 1e3), RestOutput.BumpLeft(AxleEnd.Rear)),
        (new("front-droop-left", "front droop left to the rebound stop", "mm", "F0", 1e3), RestOutput.DroopLeft(AxleEnd.Front)),
        (new("rear-droop-left", "rear droop left to the rebound stop", "mm", "F0", 1e3), RestOutput.DroopLeft(AxleEnd.Rear)),
        .. cars.Any(c => c.Model.Trim.FrictionBand.Any(b => b > 0.0)) ? new[] { (new Shown("friction-band", "height left open by friction, ± front", "mm", "F1", 1e3), RestOutput.FrictionBand) } : [],
        (new("line-pressure", "line pressure", "bar", "F1", 1e-5), RestOutput.LinePressure),
        (new("lamp-drop", "dipped beam drop", "%", "F2", 100.0), RestOutput.LampDrop),
    ];

    private static List<(Shown Row, StaticOutput Output)> Axles()
    {
        var rows = new List<(Shown Row, StaticOutput Output)>();
        foreach (var (name, end) in new[] { ("front", AxleEnd.Front), ("rear", AxleEnd.Rear) })
        {
            rows.AddRange(
            [
                (new($"{name}-wheel-rate", $"{name} wheel rate, each", "N/mm", "F2", 1e-3), RestOutput.WheelRate(end)),
                (new($"{name}-frequency", $"{name} ride frequency", "Hz", "F3", 1.0), RestOutput.Frequency(end)),
                (new($"{name}-frequency-rigid-tyres", $"{name} ride frequency on rigid tyres", "Hz", "F3", 1.0), RestOutput.FrequencyOnRigidTyres(end)),
                (new($"{name}-frequency-slow", $"{name} ride frequency, line at one pressure", "Hz", "F3", 1.0), RestOutput.SlowFrequency(end)),
                (new($"{name}-deflection", $"{name} effective static deflection", "mm", "F0", 1e3), RestOutput.Deflection(end)),
                (new($"{name}-damping", $"{name} damping ratio, mean at zero speed", "–", "F2", 1.0), RestOutput.Damping(end)),
                (new($"{name}-damping-bump", $"{name} damping ratio, bump", "–", "F2", 1.0), RestOutput.BumpDamping(end)),
                (new($"{name}-damping-rebound", $"{name} damping ratio, rebound", "–", "F2", 1.0), RestOutput.ReboundDamping(end)),
                (new($"{name}-hop", $"{name} wheel hop", "Hz", "F1", 1.0), RestOutput.Hop(end)),
            ]);
        }

        rows.Add((new("ratio", "frequency ratio, rear over front", "–", "F3", 1.0), StaticOutput.FrequencyRatio));
        return rows;
    }

    private static List<(Shown Row, StaticOutput Output)> Body() =>
    [
        (new("dynamic-index", "dynamic index k²/(b·c)", "–", "F3", 1.0), StaticOutput.DynamicIndex),
        (new("bounce", "bounce", "Hz", "F3", 1.0), StaticOutput.BounceFrequency),
        (new("bounce-centre", "its centre behind the front axle", "m", "F2", 1.0), RestOutput.BounceCentre),
        (new("pitch", "pitch", "Hz", "F3", 1.0), StaticOutput.PitchFrequency),
        (new("pitch-centre", "its centre behind the front axle", "m", "F2", 1.0), RestOutput.PitchCentre),
        (new("roll", "roll", "Hz", "F3", 1.0), RestOutput.RollFrequency),
        (new("roll-rate", "roll rate of springs and bars", "N m/°", "F0", 1.0 / Shown.Degrees), RestOutput.RollRate),
        (new("roll-front-share", "its front share", "%", "F0", 100.0), RestOutput.RollFrontShare),
        (new("suited-speed", "speed this ratio suits", "km/h", "F0", 3.6), RestOutput.SuitedSpeed),
    ];
}
