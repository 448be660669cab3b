using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Models;

namespace Heaveline.Files.Cars;

/// <summary>
/// Warns of an axle whose ride frequency no road vehicle has, and looks for the slip that explains it: each candidate is undone and the frequency
/// computed again. Limits: common practice, no source.
/// </summary>
internal static class FrequencySlips
{
    private const double Lowest = 0.7;
    private const double Highest = 3.2;
    private const double UsualLow = 0.9;
    private const double UsualHigh = 2.2;

    // 1 lbf/in in N/mm and 1 lb in kg: the agreement of 1959 and standard gravity.
    private const double PoundPerInch = 0.17512683524647636;
    private const double Pound = 0.45359237;

    /// <summary>Ride frequency of an axle at its trim, the other axle held, Hz: springs and tyres in series under the sprung load.</summary>
    public static double Of(RideModel model, int axle)
    {
        var i = 2 * axle;
        var mass = model.Trim.AxleSprungLoad[axle] / 2.0 / Gravity.Standard;
        return Frequency((model.Tangent.WheelRate[i] + model.Tangent.WheelRate[i + 1]) / 2.0, TyreRate(model.Car, axle), mass);
    }

    /// <summary>Warns about both axles.</summary>
    public static void Check(RideModel model, Node root, Reader reader)
    {
        for (var axle = 0; axle < 2; axle++)
        {
            var frequency = Of(model, axle);
            if (frequency is >= Lowest and <= Highest)
            {
                continue;
            }

            var end = axle == 0 ? "front" : "rear";
            var rate = (model.Tangent.WheelRate[2 * axle] + model.Tangent.WheelRate[(2 * axle) + 1]) / 2.0;
            var mass = model.Trim.AxleSprungLoad[axle] / 2.0 / Gravity.Standard;
            var likely = Candidates(model.Car, axle, root)
                .Where(slip => slip is { At: not null, IsConceivable: true })
                .Select(slip => (Slip: slip, Then: Frequency(rate * slip.RateFactor, TyreRate(model.Car, axle), mass * slip.MassFactor)))
                .Where(trial => trial.Then is >= UsualLow and <= UsualHigh)
                .Take(2)
                .ToList();
            var place = (likely.Count > 0 ? likely[0].Slip.At : root.At(end, "spring")) ?? root;
            var advice = likely.Count == 0
                ? "Check the spring's rate and motion ratio, the weighing and their units."
                : "Likely slip: " + string.Join("; or ", likely.Select(trial =>
                    FormattableString.Invariant($"{trial.Slip.Words} (without it {trial.Then:0.00} Hz)"))) + ".";
            reader.Warn(
                place.Place,
                FormattableString.Invariant($"the {end} axle rides at {frequency:0.00} Hz; road vehicles lie between {Lowest} and {Highest} Hz."),
                advice);
        }
    }

    private static double TyreRate(Car car, int axle) => car.Axles[axle].Tyre.Rate.Si * (car.Kind == VehicleKind.TwoWheeler ? 0.5 : 1.0);

    private static double Frequency(double rate, double tyre, double mass) =>
        Math.Sqrt(Math.Max(0.0, rate * tyre / (rate + tyre)) / mass) / (2.0 * Math.PI);

    private static IEnumerable<Slip> Candidates(Car car, int axle, Node root)
    {
        var end = axle == 0 ? "front" : "rear";
        var spring = root.At(end, "spring");
        var rate = spring?.At("rate") ?? spring?.At("wheel-rate");
        var weighing = root.At("weighing", end) ?? root.At("weighing", $"{end}-left");
        var ratio = spring?.At("moves") ?? spring?.At("spring-per-wheel") ?? spring?.At("wheel-per-spring") ?? spring?.At("sweep");
        var r = car.Axles[axle].Spring.MotionRatio.AtReference.Si;
        var newtonsPerMetre = (car.Axles[axle].Spring.Law as LinearSpring)?.Rate.Si ?? double.NaN;
        var kilograms = axle == 0 ? car.Weighing.Front : car.Weighing.Rear;

        // No spring of a road vehicle is softer than 1 N/mm or stiffer than 1000 N/mm; no axle of a car weighs 2.5 t.
        yield return new Slip(rate, "the rate in N/mm written as N/m", 1000.0, 1.0) { IsConceivable = newtonsPerMetre < 1e3 };
        yield return new Slip(rate, "the rate in N/m written as N/mm", 0.001, 1.0) { IsConceivable = newtonsPerMetre > 1e6 };
        yield return new Slip(weighing, "a weight in newtons written as a mass in kilograms", 1.0, 1.0 / Gravity.Standard)
        {
            IsConceivable = kilograms > (car.Kind == VehicleKind.Car ? 2500.0 : 700.0),
        };
        yield return new Slip(ratio, "the motion ratio upside down", 1.0 / (r * r * r * r), 1.0);
        yield return new Slip(spring?.At("rate"), "a rate measured at the wheel given as the spring's (then it is wheel-rate)", 1.0 / (r * r), 1.0)
        {
            IsConceivable = r != 1.0,
        };
        yield return new Slip(
            spring?.At("wheel-rate"), "a rate measured at the spring given as the wheel's (then it is rate, with its motion ratio)", 0.5, 1.0);
        yield return new Slip(rate, "a rate in lbf/in written as N/mm", PoundPerInch, 1.0);
        yield return new Slip(rate, "a rate in N/mm written as lbf/in", 1.0 / PoundPerInch, 1.0);
        yield return new Slip(weighing, "a mass in pounds written as kilograms", 1.0, Pound);
        yield return new Slip(weighing, "a mass in kilograms written as pounds", 1.0, 1.0 / Pound);
        yield return new Slip(weighing, "the weight of the whole car given for one axle", 1.0, 0.5);
        yield return new Slip(weighing, "the weight of one wheel given for the axle", 1.0, 2.0);
        yield return new Slip(rate, "the rate of both springs together given for one", 0.5, 1.0);
    }
}
