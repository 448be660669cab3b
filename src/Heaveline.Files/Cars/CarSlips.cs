using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>Warns of what is possible but not plausible in a car that can stand. Limits: common practice, no source.</summary>
internal static class CarSlips
{
    private static readonly string[] Ends = ["front", "rear"];

    // An interconnection holds up the body in heave and leaves pitch to the corner springs; road vehicles pitch at 0.8 Hz and above.
    private const double SlowestPitch = 0.4;

    /// <summary>Adds the warnings.</summary>
    /// <param name="models">The car empty, then under each of its loads.</param>
    /// <param name="root">The file.</param>
    /// <param name="reader">Receives them.</param>
    public static void Check(IReadOnlyList<RideModel> models, Node root, Reader reader)
    {
        var model = models[0];
        var told = FrequencySlips.Check(model, root, reader);
        CheckBody(model.Car, root, reader);
        for (var axle = 0; axle < 2; axle++)
        {
            CheckAxle(model.Car, axle, root, reader);
            SizeSlips.Check(model, axle, root, reader);
            CheckDamping(model, axle, root, reader);
            DamperSlips.Check(model.Car.Axles[axle].Damper.Law, root.At(Ends[axle], "damper"), reader);

            // A spring too stiff for its car is too stiff for its tyre as well: the spring is told already.
            if (!told.Contains(axle))
            {
                CheckTyre(model, axle, root, reader);
            }
        }

        SizeSlips.CheckSides(model.Car, root, reader);
        SizeSlips.CheckLoads(model.Car, root, reader);
        CheckPitch(model, root, reader);
        CoilSlips.Check(model, root, reader);
        CheckHanging(models, root, reader);
        foreach (var end in SpringTableEnd.Standing(models))
        {
            Warn(reader, CoilSlips.Spring(root, (int)end.End)?.At("table"), true, $"{end.WordsStanding}.", SpringTableEnd.Advice);
        }
    }

    private static void CheckHanging(IReadOnlyList<RideModel> models, Node root, Reader reader)
    {
        for (var axle = 0; axle < 2; axle++)
        {
            if (models.FirstOrDefault(model => model.Trim.ReboundLeft[2 * axle] < 0.0) is { } hung)
            {
                var stop = root.At(Ends[axle], "rebound-stop") ?? CoilSlips.Spring(root, axle) ?? root;
                reader.Warn(
                    stop.Place,
                    FormattableString.Invariant($"under '{hung.Load.Name}' the {Ends[axle]} stands with its rebound stops stretched by ")
                    + FormattableString.Invariant($"{-In.Millimetres.Of(hung.Trim.ReboundLeft[2 * axle]):F0} mm: what is said of its springs there ")
                    + "is as much of the stops.",
                    "Check the lengths of the springs and the clearance of the stops.");
            }
        }
    }

    private static void CheckPitch(RideModel model, Node root, Reader reader)
    {
        var frequency = BodyModes.Of(model).Pitch.Frequency;
        if (model.Car.Interconnection is null || frequency >= SlowestPitch)
        {
            return;
        }

        // The softer spring is the likelier slip.
        double Rate(int axle) => (model.Car.Axles[axle].Spring.Law as LinearSpring)?.Rate.Si ?? double.PositiveInfinity;
        var softer = Rate(0) <= Rate(1) ? 0 : 1;
        var spring = CoilSlips.Spring(root, softer);
        var node = Given(spring, "rate", "wheel-rate") ?? spring ?? root.At("interconnection") ?? root;
        reader.Warn(
            node.Place,
            FormattableString.Invariant($"the body pitches at {frequency:0.###} Hz; road vehicles lie above {SlowestPitch} Hz. ")
            + "The interconnection does not resist pitch, and the corner springs hardly do.",
            Rate(softer) < 1e3
                ? "Likely slip: a rate in N/mm written as N/m. Corner springs must hold the body in pitch beside an interconnection."
                : "Give stiffer corner springs: they alone hold the body in pitch beside an interconnection.");
    }

    private static void CheckBody(Car car, Node root, Reader reader)
    {
        if (root.At("body", "centre-of-gravity-height") is { } height)
        {
            var h = car.Body.CentreHeight.Si;
            var (low, high) = car.Kind == VehicleKind.TwoWheeler ? (0.35, 1.0) : (0.30, 1.1);
            Warn(
                reader,
                height,
                h < low,
                $"is {height.Text}; {low} to {high} m is usual.",
                "Is it counted from the ground, and not from the axle or the floor?");
            Warn(
                reader,
                height,
                h > high,
                $"is {height.Text}; {low} to {high} m is usual.",
                "Is it the body's centre of gravity, and not the roof or a load?");
        }

        var widest = Math.Max(car.Front.Track.Si, car.Rear.Track.Si);
        Warn(
            reader,
            root.At("wheelbase"),
            widest > car.Wheelbase.Si,
            $"is {root.At("wheelbase")?.Text}, less than a track.",
            "Likely slip: wheelbase and track swapped.");
    }

    private static void CheckAxle(Car car, int axle, Node root, Reader reader)
    {
        // A raked fork moves 1/cos(rake) times as far as its wheel, about 1.10.
        var mostRatio = car.Kind == VehicleKind.TwoWheeler ? 1.20 : 1.05;
        var end = Ends[axle];
        var of = car.Axles[axle];
        var node = root.At(end)!;
        foreach (var (name, ratio) in new[] { ("spring", of.Spring.MotionRatio), ("damper", of.Damper.MotionRatio) })
        {
            var r = ratio.AtReference.Si;
            Warn(
                reader,
                Given(node.At(name), "moves", $"{name}-per-wheel", $"wheel-per-{name}", "sweep"),
                r > mostRatio,
                FormattableString.Invariant($"makes the {name} move {r:0.00} times as far as the wheel; few do."),
                FormattableString.Invariant($"Likely slip: the ratio upside down. The other way up it is {1.0 / r:0.00}."));
        }

        foreach (var stop in new[] { "bump-stop", "rebound-stop" })
        {
            var clearance = (stop == "bump-stop" ? of.BumpStop : of.ReboundStop)?.Clearance.Si;
            Warn(
                reader,
                node.At(stop, "clearance"),
                clearance == 0.0,
                "is 0: the stop touches in the state described.",
                "Right if it does (some cars ride on their stops); else measure the gap in wheel travel.");
        }
    }

    private static void CheckTyre(RideModel model, int axle, Node root, Reader reader)
    {
        const double LeastPerWheelRate = 3.0;
        var half = model.Car.Kind == VehicleKind.TwoWheeler ? 0.5 : 1.0;
        var share = half * model.Car.Axles[axle].Tyre.Rate.Si / model.Tangent.WheelRate[2 * axle];
        Warn(
            reader,
            root.At(Ends[axle], "tyre", "rate"),
            share < LeastPerWheelRate,
            FormattableString.Invariant($"is {share:0.0} times the wheel rate; tyres are usually more than 3 times as stiff as the springs."),
            "Is it N/mm? A car tyre has about 150 to 300 N/mm. If it is right, check the spring's rate and ratio.");
    }

    private static void CheckDamping(RideModel model, int axle, Node root, Reader reader)
    {
        const double Least = 0.05;
        const double Most = 1.2;
        var i = 2 * axle;
        if (root.At(Ends[axle], "damper", "bump") is not { } table || model.Tangent.WheelRate[i] <= 0.0)
        {
            return;
        }

        var mass = (model.Rolls ? 1.0 : 0.5) * model.Trim.SprungLoad[i] / Gravity.Standard;
        var damping = model.Tangent.SuspensionDamping[i, i] / (2.0 * Math.Sqrt(model.Tangent.WheelRate[i] * mass));
        var message = FormattableString.Invariant($"makes {damping:0.###} of critical damping; {Least} to {Most} is usual.");
        Warn(reader, table, damping < Least, message, "Likely slip: velocities in mm/s written as m/s, or the damper's ratio upside down.");
        Warn(
            reader,
            table,
            damping > Most,
            message,
            "Likely slip: velocities in m/s written as mm/s, forces in N written as kN, or forces at the wheel.");
    }

    private static Node? Given(Node? group, params ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            if (group?.At(key) is { } node)
            {
                return node;
            }
        }

        return null;
    }

    /// <summary>Warns about a value that is given and odd.</summary>
    public static void Warn(Reader reader, Node? node, bool isOdd, string message, string advice)
    {
        if (isOdd && node is not null)
        {
            reader.Warn(node.Place, $"{node.Subject} {message}", advice);
        }
    }
}
