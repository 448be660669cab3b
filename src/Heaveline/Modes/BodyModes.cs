using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>
/// The textbook two-degree bounce–pitch solution: the sprung body on the two axles' ride rates (springs in series with tyres), wheels massless, no
/// damping. An interconnection counts with its coupling of the axles, a fluid line as shut; gravity's tilting
/// moment is taken off the pitch stiffness.
/// </summary>
public sealed record BodyModes
{
    /// <summary>Mode whose centre lies farther from the centre of gravity: mostly heave.</summary>
    public required BodyMode Bounce { get; init; }

    /// <summary>Mode whose centre lies nearer the centre of gravity: mostly pitch.</summary>
    public required BodyMode Pitch { get; init; }

    /// <summary>Roll; null for a two-wheeler.</summary>
    public required RollMode? Roll { get; init; }

    /// <summary>
    /// Dynamic index k²/(b·c) (–): at 1 the axles are independent, each axle's ride frequency is a mode and the centres are the axles.
    /// </summary>
    public required double DynamicIndex { get; init; }

    /// <summary>Gravity's tilting moment M·g·h_θ, N m/rad; 0 when no pitch axis height is given.</summary>
    public required double PitchGravity { get; init; }

    /// <summary>The body modes of a model at its trim.</summary>
    public static BodyModes Of(RideModel model)
    {
        var body = model.Body;
        var (b, c) = (model.X[0], -model.X[2]);
        var tyres = new[] { SuspensionRates.TyresOf(model, Cars.AxleEnd.Front), SuspensionRates.TyresOf(model, Cars.AxleEnd.Rear) };
        var k = SuspensionRates.ThroughTyres(SuspensionRates.ByAxle(model.Tangent.SuspensionRate), tyres);
        var gyration = Math.Sqrt(body.PitchInertia / body.Mass);

        // Over an axle the body stands at h = z − x·θ. In z and k·θ the mass is M twice, so the matrix stays symmetric.
        var heave = (k[0, 0] + (2.0 * k[0, 1]) + k[1, 1]) / body.Mass;
        var coupling = -((b * (k[0, 0] + k[0, 1])) - (c * (k[1, 1] + k[0, 1]))) / (body.Mass * gyration);
        var turning = (b * b * k[0, 0]) - (2.0 * b * c * k[0, 1]) + (c * c * k[1, 1]);
        var pitch = (turning - model.PitchGravity) / body.PitchInertia;

        var middle = 0.5 * (heave + pitch);
        var spread = Math.Sqrt((0.25 * (heave - pitch) * (heave - pitch)) + (coupling * coupling));
        // Eigenvector (cos a, sin a) of the greater root; the other one stands square to it.
        var angle = 0.5 * Math.Atan2(2.0 * coupling, heave - pitch);
        BodyMode Mode(double squared, double z, double kTheta)
        {
            var node = Math.Abs(kTheta) > 1e-12 * Math.Abs(z) ? gyration * z / kTheta : double.PositiveInfinity;
            return new BodyMode
            {
                Omega = Math.Sqrt(squared),
                NodeAhead = node,
                NodeBehindFrontAxle = b - node,
                NodeBetweenAxles = node <= b && node >= -c,
            };
        }

        var fast = Mode(middle + spread, Math.Cos(angle), Math.Sin(angle));
        var slow = Mode(middle - spread, -Math.Sin(angle), Math.Cos(angle));
        var fastBounces = Math.Abs(fast.NodeAhead) > Math.Abs(slow.NodeAhead);
        return new BodyModes
        {
            Bounce = fastBounces ? fast : slow,
            Pitch = fastBounces ? slow : fast,
            Roll = model.Rolls ? RollOf(model) : null,
            DynamicIndex = body.PitchInertia / (body.Mass * b * c),
            PitchGravity = model.PitchGravity,
        };
    }

    private static RollMode RollOf(RideModel model)
    {
        double[] arm = [.. Enumerable.Range(0, 4).Select(i => 0.5 * (model.Y[i] - model.Y[i ^ 1]))];
        double Moment(MathNet.Numerics.LinearAlgebra.Matrix<double> k, int wheels) =>
            Enumerable.Range(0, wheels).Sum(i => arm[i] * Enumerable.Range(0, 4).Sum(j => k[i, j] * arm[j]));
        var springs = model.Tangent.SuspensionRate;
        var onTyres = Moment(SuspensionRates.ThroughTyres(springs, model.Numbers.TyreRate), 4);
        var total = Moment(springs, 4);
        return new RollMode
        {
            Stiffness = total,
            StiffnessOnTyres = onTyres,
            FrontShare = Moment(springs, 2) / total,
            Gravity = model.RollGravity,
            Frequency = Math.Sqrt((onTyres - model.RollGravity) / model.Body.RollInertia) / (2.0 * Math.PI),
        };
    }
}
