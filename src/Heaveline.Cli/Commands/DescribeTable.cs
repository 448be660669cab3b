using Heaveline.Cars;
using Heaveline.Cli.Output;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Responses;

namespace Heaveline.Cli.Commands;

/// <summary>What a car is, load state by load state.</summary>
internal static class DescribeTable
{
    public static IReadOnlyList<FactTable> Of(Car car, IReadOnlyList<RideModel> models)
    {
        string[] loads = [.. models.Select(m => m.Load.Name)];
        var axles = models.Select(AxleRide.Of).ToList();
        return [Standing(models, loads), Axles(car, models, axles, loads), Body(models, axles, loads)];
    }

    private static FactTable Standing(IReadOnlyList<RideModel> models, string[] loads)
    {
        IEnumerable<double?> All(Func<RideModel, double?> of) => models.Select(of);
        return new FactTable("Standing", loads)
            .Add("mass", "mass", "kg", "F0", All(m => m.Trim.WheelLoad.Sum() / Gravity.Standard))
            .Add("front-load", "on the front axle", "kg", "F0", All(m => (m.Trim.WheelLoad[0] + m.Trim.WheelLoad[1]) / Gravity.Standard))
            .Add("rear-load", "on the rear axle", "kg", "F0", All(m => (m.Trim.WheelLoad[2] + m.Trim.WheelLoad[3]) / Gravity.Standard))
            .Add("sprung-mass", "sprung mass", "kg", "F0", All(m => m.Body.Mass))
            .Add("centre", "its centre behind the front axle", "mm", "F0", All(m => 1e3 * m.Body.BehindFrontAxle))
            .Add("front-height", "front height, change", "mm", "F1", All(m => 1e3 * m.Trim.FrontHeight))
            .Add("rear-height", "rear height, change", "mm", "F1", All(m => 1e3 * m.Trim.RearHeight))
            .Add("attitude", "nose-up attitude", "°", "F2", All(m => -Degrees(m.Trim.Pitch)))
            .Add("lean", "lean to the right", "°", "F2", models.Any(m => Math.Abs(m.Trim.Roll) > 1e-6) ? All(m => Degrees(m.Trim.Roll)) : [])
            .Add("front-bump-left", "front travel left to the bump stop", "mm", "F0", All(m => 1e3 * Math.Min(m.Trim.BumpLeft[0], m.Trim.BumpLeft[1])))
            .Add("rear-bump-left", "rear travel left to the bump stop", "mm", "F0", All(m => 1e3 * Math.Min(m.Trim.BumpLeft[2], m.Trim.BumpLeft[3])))
            .Add("front-droop-left", "front droop left to the rebound stop", "mm", "F0", All(m => 1e3 * Math.Min(m.Trim.ReboundLeft[0], m.Trim.ReboundLeft[1])))
            .Add("rear-droop-left", "rear droop left to the rebound stop", "mm", "F0", All(m => 1e3 * Math.Min(m.Trim.ReboundLeft[2], m.Trim.ReboundLeft[3])))
            .Add("friction-band", "height left open by friction, ± front", "mm", "F1", models.Any(m => m.Trim.FrictionBand.Any(b => b > 0.0)) ? All(m => 1e3 * m.Trim.FrictionBand[0]) : [])
            .Add("line-pressure", "line pressure", "bar", "F1", All(m => m.Trim.LinePressure.Count > 0 ? m.Trim.LinePressure[0] / 1e5 : null))
            .Add("lamp-drop", "dipped beam drop", "%", "F2", All(m => 100.0 * HeadlampMeasures.DropAtTrim(m)));
    }

    private static FactTable Axles(Car car, IReadOnlyList<RideModel> models, List<IReadOnlyList<AxleRide>> axles, string[] loads)
    {
        var table = new FactTable("Axles", loads);
        foreach (var (end, k) in new[] { ("front", 0), ("rear", 1) })
        {
            IEnumerable<double?> All(Func<AxleRide, double?> of) => axles.Select(a => of(a[k]));
            table
                .Add($"{end}-wheel-rate", $"{end} wheel rate, each", "N/mm", "F2", All(a => 1e-3 * a.Rates.WheelRate))
                .Add($"{end}-frequency", $"{end} ride frequency", "Hz", "F3", All(a => a.Rates.Frequency))
                .Add($"{end}-frequency-rigid-tyres", $"{end} ride frequency on rigid tyres", "Hz", "F3", All(a => a.Rates.FrequencyOnRigidTyres))
                .Add($"{end}-frequency-slow", $"{end} ride frequency, line at one pressure", "Hz", "F3", All(a => a.RatesAtRest?.Frequency))
                .Add($"{end}-deflection", $"{end} effective static deflection", "mm", "F0", All(a => 1e3 * a.Rates.Deflection))
                .Add($"{end}-damping", $"{end} damping ratio, mean at zero speed", "–", "F2", All(a => a.Damping.Ratio))
                .Add($"{end}-damping-bump", $"{end} damping ratio, bump", "–", "F2", All(a => a.Damping.BumpRatio))
                .Add($"{end}-damping-rebound", $"{end} damping ratio, rebound", "–", "F2", All(a => a.Damping.ReboundRatio))
                .Add($"{end}-hop", $"{end} wheel hop", "Hz", "F1", All(a => a.Rates.HopFrequency));
        }

        return table.Add("ratio", "frequency ratio, rear over front", "–", "F3", axles.Select(a => (double?)(a[1].Rates.Frequency / a[0].Rates.Frequency)));
    }

    private static FactTable Body(IReadOnlyList<RideModel> models, List<IReadOnlyList<AxleRide>> axles, string[] loads)
    {
        var modes = models.Select(BodyModes.Of).ToList();
        var steps = models.Select(Coincidence.Of).ToList();
        IEnumerable<double?> All(Func<BodyModes, double?> of) => modes.Select(of);
        return new FactTable("Body", loads)
            .Add("dynamic-index", "dynamic index k²/(b·c)", "–", "F3", All(m => m.DynamicIndex))
            .Add("bounce", "bounce", "Hz", "F3", All(m => m.Bounce.Frequency))
            .Add("bounce-centre", "its centre behind the front axle", "m", "F2", All(m => m.Bounce.NodeBehindFrontAxle))
            .Add("pitch", "pitch", "Hz", "F3", All(m => m.Pitch.Frequency))
            .Add("pitch-centre", "its centre behind the front axle", "m", "F2", All(m => m.Pitch.NodeBehindFrontAxle))
            .Add("roll", "roll", "Hz", "F3", All(m => m.Roll?.Frequency))
            .Add("roll-rate", "roll rate of springs and bars", "N m/°", "F0", All(m => m.Roll?.Stiffness * Math.PI / 180.0))
            .Add("roll-front-share", "its front share", "%", "F0", All(m => 100.0 * m.Roll?.FrontShare))
            .Add("suited-speed", "speed this ratio suits", "km/h", "F0", steps.Select(s => 3.6 * s.SuitedSpeed));
    }

    private static double Degrees(double rad) => rad * 180.0 / Math.PI;
}
