using MathNet.Numerics.LinearAlgebra;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Modes;

/// <summary>
/// The textbook two-degree bounce–pitch solution: the sprung body on the two axles' ride rates (springs in series with tyres), wheels massless, no
/// damping. An interconnection counts with its coupling of the axles, a fluid line as it gives way at each mode's own frequency; gravity's tilting
/// moment is taken off the pitch stiffness.
/// </summary>
public sealed record BodyModes
{
    /// <summary>The slower mode, or the one that another car's first becomes: <see cref="Like"/>.</summary>
    public required BodyMode First { get; init; }

    /// <summary>The faster mode, or the one that another car's second becomes: <see cref="Like"/>.</summary>
    public required BodyMode Second { get; init; }

    /// <summary>
    /// Of the two the one whose centre lies farther from the centre of gravity: mostly heave. Near a dynamic index of 1 a small change of the car
    /// makes it the other mode; <see cref="First"/> and <see cref="Second"/> can be followed there.
    /// </summary>
    public BodyMode Bounce => FirstBounces ? First : Second;

    /// <summary>Of the two the one whose centre lies nearer the centre of gravity: mostly pitch.</summary>
    public BodyMode Pitch => FirstBounces ? Second : First;

    /// <summary>Roll; null for a two-wheeler.</summary>
    public required RollMode? Roll { get; init; }

    /// <summary>
    /// Dynamic index k²/(b·c) (–): at 1 the axles are independent, each axle's ride frequency is a mode and the centres are the axles.
    /// </summary>
    public required double DynamicIndex { get; init; }

    /// <summary>Gravity's tilting moment M·g·h_θ, N m/rad; 0 when no pitch axis height is given.</summary>
    public required double PitchGravity { get; init; }

    /// <summary>Masses and rates over the axles; where a fluid line gives way, at the geometric mean of both modes' frequencies.</summary>
    private BodyPencil Pencil { get; init; }

    /// <summary>Whether the first is the faster one of <see cref="Pencil"/>.</summary>
    private bool FirstIsFast { get; init; }

    private bool FirstBounces => Math.Abs(First.NodeAhead) > Math.Abs(Second.NodeAhead);

    /// <summary>
    /// The same two modes, the first being the one that another car's first becomes while its masses and rates change into these in small steps, each
    /// step matched by shape. Two frequencies that come nearer than a hundredth on the way pass through one another; others keep their order.
    /// </summary>
    /// <param name="other">The modes that are followed: of the same car as stated, under another load, or of the car that it is a variant of.</param>
    public BodyModes Like(BodyModes other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var fast = other.FirstIsFast ^ BodyPencil.Exchanges(other.Pencil, Pencil);
        return fast == FirstIsFast ? this : this with { First = Second, Second = First, FirstIsFast = fast };
    }

    /// <summary>The body modes of a car without loads; null where it cannot stand so.</summary>
    /// <param name="car">The car.</param>
    public static BodyModes? OfEmpty(Car car)
    {
        try
        {
            return Of(RideModel.Of(car));
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }

    /// <summary>The body modes of a model at its trim.</summary>
    public static BodyModes Of(RideModel model)
    {
        var body = model.Body;
        var (b, c) = (model.X[0], -model.X[2]);
        var gyration = Math.Sqrt(body.PitchInertia / body.Mass);
        var lines = FluidSide.Of(model);
        Pair At(double omega)
        {
            var k = AxlesAt(model, lines, omega);
            // Over an axle the body stands at h = z − x·θ. In z and k·θ the mass is M twice, so the matrix stays symmetric.
            var heave = (k[0, 0] + (2.0 * k[0, 1]) + k[1, 1]) / body.Mass;
            var coupling = -((b * (k[0, 0] + k[0, 1])) - (c * (k[1, 1] + k[0, 1]))) / (body.Mass * gyration);
            var turning = (b * b * k[0, 0]) - (2.0 * b * c * k[0, 1]) + (c * c * k[1, 1]);
            var pitch = (turning - model.PitchGravity) / body.PitchInertia;
            var middle = 0.5 * (heave + pitch);
            var spread = Math.Sqrt((0.25 * (heave - pitch) * (heave - pitch)) + (coupling * coupling));
            // Eigenvector (cos a, sin a) of the greater root; the other one stands square to it.
            return new Pair(middle - spread, middle + spread, 0.5 * Math.Atan2(2.0 * coupling, heave - pitch));
        }

        BodyMode Mode(bool isFast)
        {
            (double Z, double KTheta) Shape(Pair of) => isFast ? (Math.Cos(of.Angle), Math.Sin(of.Angle)) : (-Math.Sin(of.Angle), Math.Cos(of.Angle));
            double Squared(double omega) => isFast ? At(omega).Fast : At(omega).Slow;
            double Fluid(double omega)
            {
                var (z, kTheta) = Shape(At(omega));
                var turn = kTheta / gyration;
                return lines.Sum(line => line.Inertance * Math.Pow(line.Flow(z - (b * turn), z + (c * turn), omega).Magnitude, 2)) / body.Mass;
            }

            var squared = OwnFrequency.Squared(Squared, Fluid, lines);
            var (heaves, turns) = Shape(At(lines.Length == 0 ? 0.0 : Math.Sqrt(Math.Max(squared, 0.0))));
            var node = Math.Abs(turns) > 1e-12 * Math.Abs(heaves) ? gyration * heaves / turns : double.PositiveInfinity;
            return new BodyMode
            {
                Omega = Math.Sqrt(squared),
                NodeAhead = node,
                NodeBehindFrontAxle = b - node,
                Wheelbase = b + c,
            };
        }

        var (first, second) = (Mode(isFast: false), Mode(isFast: true));
        var between = AxlesAt(model, lines, Math.Sqrt(first.Omega * second.Omega) is > 0.0 and { } mean ? mean : 0.0);
        return new BodyModes
        {
            First = first,
            Second = second,
            Pencil = BodyPencil.Of(
                body.Mass, gyration * gyration, b, c, (between[0, 0], between[0, 1], between[1, 1]), model.PitchGravity),
            Roll = model.Rolls ? RollOf(model) : null,
            DynamicIndex = body.PitchInertia / (body.Mass * b * c),
            PitchGravity = model.PitchGravity,
        };
    }

    // Both axles' rates with a line swinging at ω (infinity: shut), in series with the tyres, N/m.
    private static Matrix<double> AxlesAt(RideModel model, IReadOnlyList<FluidSide> lines, double omega)
    {
        var k = SuspensionRates.ByAxle(model.Tangent.SuspensionRate);
        foreach (var line in lines)
        {
            k[0, 0] -= line.Yields((1.0, 0.0), (1.0, 0.0), omega).Real;
            k[0, 1] -= line.Yields((1.0, 0.0), (0.0, 1.0), omega).Real;
            k[1, 1] -= line.Yields((0.0, 1.0), (0.0, 1.0), omega).Real;
        }

        k[1, 0] = k[0, 1];
        return SuspensionRates.ThroughTyres(k, [SuspensionRates.TyresOf(model, AxleEnd.Front), SuspensionRates.TyresOf(model, AxleEnd.Rear)]);
    }

    private static RollMode RollOf(RideModel model)
    {
        double[] arm = [.. Enumerable.Range(0, 4).Select(i => 0.5 * (model.Y[i] - model.Y[i ^ 1]))];
        double Moment(Matrix<double> k, int wheels) =>
            Enumerable.Range(0, wheels).Sum(i => arm[i] * Enumerable.Range(0, 4).Sum(j => k[i, j] * arm[j]));
        var slow = SuspensionRates.LineOpen(model) ?? model.Tangent.SuspensionRate;
        var onTyres = Moment(SuspensionRates.ThroughTyres(slow, model.Numbers.TyreRate), 4);
        var total = Moment(slow, 4);
        var lines = FluidSide.Of(model);
        double Swinging(double omega)
        {
            var rates = double.IsInfinity(omega) ? model.Tangent.SuspensionRate : FluidLineFlow.Rates(model, omega).Map(rate => rate.Real);
            return (Moment(SuspensionRates.ThroughTyres(rates, model.Numbers.TyreRate), 4) - model.RollGravity) / model.Body.RollInertia;
        }

        double Fluid(double omega) => lines.Select((line, side) =>
            line.Inertance * Math.Pow(line.Flow(arm[side], arm[2 + side], omega).Magnitude, 2)).Sum() / model.Body.RollInertia;
        return new RollMode
        {
            Stiffness = total,
            StiffnessOnTyres = onTyres,
            FrontShare = Moment(slow, 2) / total,
            Gravity = model.RollGravity,
            Frequency = Math.Sqrt(OwnFrequency.Squared(Swinging, Fluid, lines)) / (2.0 * Math.PI),
        };
    }

    private readonly record struct Pair(double Slow, double Fast, double Angle);
}
