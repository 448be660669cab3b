using System.Text.Json;
using Heaveline.Models;

namespace Heaveline.References.Peers;

/// <summary>Body, wheels and static loads of a case. A half model becomes two coinciding halves with half of every element.</summary>
internal static class PeerNumbers
{
    internal static RideNumbers From(JsonElement root, bool isHalf)
    {
        var body = root.GetProperty("body");
        var mass = body.Number("mass");
        var gravity = root.Number("gravity");
        JsonElement[] axles = [root.GetProperty("front"), root.GetProperty("rear")];
        double[] X = [axles[0].Number("x"), axles[0].Number("x"), axles[1].Number("x"), axles[1].Number("x")];
        double[] Y = isHalf
            ? new double[4]
            : [axles[0].Number("y_left"), axles[0].Number("y_right"), axles[1].Number("y_left"), axles[1].Number("y_right")];
        var laws = PeerLaws.From(root, axles, Y, isHalf);
        var half = isHalf ? 0.5 : 1.0;
        var own = new double[4];
        var across = new double[4];
        for (var i = 0; i < 4; i++)
        {
            var axle = axles[i / 2];
            own[i] = 1.0 / (half * axle.Number("wheel_mass", 1.0));
            if (IsSolid(axle))
            {
                var arm = 0.5 * (Y[i & 2] - Y[(i & 2) + 1]);
                var turn = arm * arm / axle.Number("axle_inertia");
                (own[i], across[i]) = ((1.0 / axle.Number("axle_mass")) + turn, (1.0 / axle.Number("axle_mass")) - turn);
            }
        }

        RideNumbers With(double[] force) => new()
        {
            Body = new SprungBody
            {
                Mass = mass,
                BehindFrontAxle = X[0],
                LeftOfMiddle = 0.0,
                Height = 0.0,
                PitchInertia = body.Number("Iyy"),
                RollInertia = body.Number("Ixx", 0.0),
                InertiaProduct = body.Number("Pxy", 0.0),
            },
            Elements = laws,
            X = X,
            Y = Y,
            PerWheel = own,
            AcrossAxle = across,
            TyreRate = [.. Enumerable.Range(0, 4).Select(i => half * axles[i / 2].GetProperty("tyre").Number("stiffness"))],
            TyreDamping = [.. Enumerable.Range(0, 4).Select(i => half * axles[i / 2].GetProperty("tyre").Number("damping"))],
            PitchGravity = mass * gravity * body.Number("h_pitch"),
            RollGravity = isHalf ? 0.0 : mass * gravity * body.Number("h_roll"),
            Rolls = !isHalf,
            TrimTravel = [.. Enumerable.Range(0, 4)
                .Select(i => isHalf ? axles[i / 2].Number("S_trim", 0.0) : axles[i / 2].Number(i % 2 == 0 ? "S_trim_left" : "S_trim_right", 0.0))],
            TrimForce = force,
            TrimLoad = Loads(mass * gravity, gravity, axles, X, Y, half),
        };

        // The laws act by F(S) − F(S_trim): what they give at the trim is the force taken off.
        var numbers = With(new double[4]);
        var force = new double[4];
        foreach (var element in laws.All)
        {
            var pushes = element.StandingAt(numbers.AtTrim(element.Sight));
            for (var i = 0; i < 4; i++)
            {
                force[i] += element.Sight.Wheels[i] * pushes;
            }
        }

        return With(force);
    }

    internal static bool IsSolid(JsonElement axle) => axle.TryGetProperty("kind", out var kind) && kind.GetString() == "solid";

    internal static double Number(this JsonElement element, string name, double? otherwise = null) =>
        element.TryGetProperty(name, out var value) ? value.GetDouble() : otherwise ?? throw new InvalidDataException($"No '{name}' in {element}.");

    // The sprung weight by levers along x, then along y, and half of each axle's own weight (bench/peers/README.md).
    private static double[] Loads(double weight, double gravity, JsonElement[] axles, double[] x, double[] y, double half)
    {
        var loads = new double[4];
        for (var i = 0; i < 4; i++)
        {
            var (own, other) = (x[i], x[i ^ 2]);
            var span = Math.Abs(y[i] - y[i ^ 1]);
            var share = span == 0.0 ? 0.5 : Math.Abs(y[i ^ 1]) / span;
            var axle = axles[i / 2];
            var wheel = IsSolid(axle) ? 0.5 * axle.Number("axle_mass") : half * axle.Number("wheel_mass");
            loads[i] = (weight * other / (other - own) * share) + (wheel * gravity);
        }

        return loads;
    }
}
