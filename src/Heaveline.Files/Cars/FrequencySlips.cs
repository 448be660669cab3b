using Heaveline.Elements;
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
    private const double UsualLow = 0.9;
    private const double UsualHigh = 2.2;

    // Above this a road car is stiff enough to look for a slip when its tyres are soft beside its springs.
    private const double Stiff = 2.0;
    private const double LeastTyrePerWheelRate = 3.0;

    // 1 lbf/in in N/mm and 1 lb in kg: the agreement of 1959 and standard gravity.
    private const double PoundPerInch = 0.17512683524647636;
    private const double Pound = 0.45359237;

    /// <summary>Warns about both axles.</summary>
    /// <returns>The axles that were warned about.</returns>
    public static IReadOnlyList<int> Check(RideModel model, Node root, Reader reader)
    {
        List<int> told = [];
        for (var axle = 0; axle < 2; axle++)
        {
            var ride = RideGuess.Of(model, axle);
            if (IsOdd(model.Car, ride.Frequency))
            {
                // Of an end that hangs in its rebound stops no rate alone says the frequency, so no slip in a rate is likely.
                var likely = Hangs(model, axle) ? [] : Likely(model.Car, ride, axle, root);
                var (place, message, advice) = Words(model.Car, ride, axle, root, likely);
                reader.WarnFirst(place, message, advice);
                told.Add(axle);
            }
            else if (ride.Frequency > Stiff && ride.Tyre < LeastTyrePerWheelRate * ride.Rate
                && Likely(model.Car, ride, axle, root)
                    .Where(t => ride.Tyre >= LeastTyrePerWheelRate * ride.Rate * t.Slip.RateFactor).ToList() is { Count: > 0 } softer)
            {
                reader.WarnFirst(
                    softer[0].Slip.At!.Place,
                    FormattableString.Invariant(
                        $"the {End(axle)} axle rides at {ride.Frequency:0.00} Hz, and its tyres are only ")
                        + FormattableString.Invariant($"{ride.Tyre / ride.Rate:0.0} times as stiff as the wheel rate."),
                    Advice(softer));
                told.Add(axle);
            }
        }

        return told;
    }

    /// <summary>
    /// Refuses, in a car that cannot stand, the likely slip that explains it, from weighing and straight springs alone. An interconnection may carry
    /// what corner springs do not.
    /// </summary>
    /// <returns>Whether anything was refused.</returns>
    public static bool RefuseLikely(Car car, Node root, Reader reader)
    {
        var before = reader.Count;
        for (var axle = 0; axle < 2; axle++)
        {
            if (RideGuess.OfStraightSpring(car, axle) is { } ride && IsOdd(car, ride.Frequency)
                && (car.Interconnection is null || ride.Frequency > Stiff) && Likely(car, ride, axle, root) is { Count: > 0 } likely)
            {
                var (place, message, advice) = Words(car, ride, axle, root, likely);
                reader.Refuse(place, $"{message.TrimEnd('.')}, and the car cannot stand.", advice);
            }
        }

        return reader.Count > before;
    }

    private static bool Hangs(RideModel model, int axle) => model.Trim.ReboundLeft[2 * axle] < 0.0;

    private static string End(int axle) => axle == 0 ? "front" : "rear";

    // Road cars by the trade's round numbers; a motorcycle's ends spread wider.
    private static (double Lowest, double Highest, string Whose) Usual(Car car) =>
        car.Kind == VehicleKind.TwoWheeler ? (0.7, 3.2, "two-wheelers") : (0.8, 2.5, "road cars");

    private static bool IsOdd(Car car, double frequency)
    {
        var (lowest, highest, _) = Usual(car);
        return !(frequency >= lowest && frequency <= highest);
    }

    private static List<(Slip Slip, double Then)> Likely(Car car, RideGuess ride, int axle, Node root) =>
        [.. Candidates(car, axle, root)
            .Where(slip => slip is { At: not null, IsConceivable: true })
            .Select(slip => (Slip: slip, Then: ride.With(slip.RateFactor, slip.MassFactor).Frequency))
            .Where(trial => trial.Then is >= UsualLow and <= UsualHigh)
            .Take(2)];

    private static (Place Place, string Message, string Advice) Words(
        Car car, RideGuess ride, int axle, Node root, List<(Slip Slip, double Then)> likely)
    {
        var (lowest, highest, whose) = Usual(car);
        var place = (likely.Count > 0 ? likely[0].Slip.At : root.At(End(axle), "spring")) ?? root;
        return (
            place.Place,
            FormattableString.Invariant($"the {End(axle)} axle rides at {ride.Frequency:0.00} Hz; {whose} lie between {lowest} and {highest} Hz."),
            likely.Count == 0 ? "Check the spring's rate and motion ratio, the weighing and their units." : Advice(likely));
    }

    private static string Advice(List<(Slip Slip, double Then)> likely) =>
        "Likely slip: " + string.Join("; or ", likely.Select(trial =>
            FormattableString.Invariant($"{trial.Slip.Words} (without it {trial.Then:0.00} Hz)"))) + ".";

    private static IEnumerable<Slip> Candidates(Car car, int axle, Node root)
    {
        var end = axle == 0 ? "front" : "rear";
        var spring = root.At(end, "spring");
        var acting = CoilSlips.Spring(root, axle);
        var rate = acting?.At("rate") ?? acting?.At("wheel-rate");
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
        yield return new Slip(acting?.At("rate"), "a rate measured at the wheel given as the spring's (then it is wheel-rate)", 1.0 / (r * r), 1.0)
        {
            IsConceivable = r != 1.0,
        };
        yield return new Slip(
            acting?.At("wheel-rate"), "a rate measured at the spring given as the wheel's (then it is rate, with its motion ratio)", 0.5, 1.0);
        yield return new Slip(rate, "a rate in lbf/in written as N/mm", PoundPerInch, 1.0);
        yield return new Slip(rate, "a rate in N/mm written as lbf/in", 1.0 / PoundPerInch, 1.0);
        yield return new Slip(weighing, "a mass in pounds written as kilograms", 1.0, Pound);
        yield return new Slip(weighing, "a mass in kilograms written as pounds", 1.0, 1.0 / Pound);
        yield return new Slip(weighing, "the weight of the whole car given for one axle", 1.0, 0.5);
        yield return new Slip(weighing, "the weight of one wheel given for the axle", 1.0, 2.0);
        yield return new Slip(rate, "the rate of both springs together given for one", 0.5, 1.0);
    }
}
