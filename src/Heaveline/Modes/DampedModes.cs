using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Modes;

/// <summary>
/// All modes of the car's small motions about its trim, damped: dampers by the mean of both slopes at zero velocity, stops as they are touched at
/// trim, friction left out, wheels on the ground, the fluid free to move.
/// </summary>
public sealed record DampedModes
{
    /// <summary>Swinging modes, from the lowest frequency up.</summary>
    public required IReadOnlyList<Mode> Swings { get; init; }

    /// <summary>Real roots, from the slowest up: an overdamped motion gives two of them and has no frequency of its own.</summary>
    public required IReadOnlyList<Mode> Creeps { get; init; }

    /// <summary>All modes: swinging ones, then creeping ones.</summary>
    public IReadOnlyList<Mode> All => [.. Swings, .. Creeps];

    /// <summary>The modes of a model.</summary>
    /// <exception cref="ArithmeticException">The eigenvalues could not be found.</exception>
    public static DampedModes Of(RideModel model) => Of(model, ModalSystem.Of(model));

    internal static DampedModes Of(RideModel model, ModalSystem system)
    {
        var modes = system.Groups().SelectMany(group => OfGroup(model, system, group)).ToList();
        return new DampedModes
        {
            Swings = [.. modes.Where(m => m.Swings).OrderBy(m => m.Frequency)],
            Creeps = [.. modes.Where(m => !m.Swings).OrderBy(m => m.Frequency)],
        };
    }

    private static IEnumerable<Mode> OfGroup(RideModel model, ModalSystem system, int[] group)
    {
        var n = group.Length;
        int[] fast = [.. Enumerable.Range(0, n).Where(i => system.HasSpeed[group[i]])];
        var state = Matrix<double>.Build.Dense(n + fast.Length, n + fast.Length);
        for (var i = 0; i < n; i++)
        {
            // A motion without a speed of its own has its rate in its row.
            var at = Array.IndexOf(fast, i);
            var row = at < 0 ? i : n + at;
            for (var j = 0; j < n; j++)
            {
                state[row, j] = system.ByPlace[group[i], group[j]];
            }

            if (at >= 0)
            {
                state[i, n + at] = 1.0;
                for (var j = 0; j < fast.Length; j++)
                {
                    state[row, n + j] = system.BySpeed[group[i], group[fast[j]]];
                }
            }
        }

        var pairs = Eigenpairs.Of(state);
        for (var k = 0; k < n + fast.Length; k++)
        {
            if (pairs.Values[k].Imaginary >= 0.0)
            {
                var motions = new Complex[system.Motions.Count];
                for (var i = 0; i < n; i++)
                {
                    motions[group[i]] = pairs.Vectors[k][i];
                }

                yield return ModeOf(model, system, pairs.Values[k], motions);
            }
        }
    }

    private static Mode ModeOf(RideModel model, ModalSystem system, Complex root, Complex[] motions)
    {
        var largest = motions.MaxBy(p => p.Magnitude);
        for (var i = 0; i < motions.Length; i++)
        {
            motions[i] = motions[i] == largest ? Complex.One : motions[i] / largest;
        }

        Complex At(int position) => motions.Select((p, k) => system.Positions[position, k] * p).Aggregate(Complex.Zero, (a, b) => a + b);
        var flows = model.Numbers.Elements.Line is not null;
        var shape = new ModeShape
        {
            Heave = At(0),
            Pitch = At(1),
            Roll = At(2),
            Wheels = [At(3), At(4), At(5), At(6)],
            Flow = flows ? [At(7), At(8)] : [],
            Motions = system.Motions.Select((m, k) => (m, k)).ToDictionary(x => x.m, x => motions[x.k]),
        };
        var shares = SharesOf(system, root, motions);
        return new Mode
        {
            Root = root,
            Shape = shape,
            Shares = shares,
            Node = NodeOf(model, shape),
            Swing = shares.MaxBy(s => s.Value).Key is Motion.Heave or Motion.Pitch
                ? BodySwings.Of(shape.Heave - (model.X[0] * shape.Pitch), shape.Heave - (model.X[2] * shape.Pitch))
                : null,
        };
    }

    private static Dictionary<Motion, double> SharesOf(ModalSystem system, Complex root, Complex[] motions)
    {
        var n = motions.Length;
        var damping = system.Damping;
        var parts = new double[n];
        for (var i = 0; i < n; i++)
        {
            var sum = Complex.Zero;
            for (var j = 0; j < n; j++)
            {
                sum += ((2.0 * root * system.Mass[i, j]) + damping[i, j]) * motions[j];
            }

            parts[i] = (motions[i] * sum).Magnitude;
        }

        var whole = parts.Sum();
        return system.Motions.Select((m, k) => (m, k)).ToDictionary(x => x.m, x => parts[x.k] / whole);
    }

    // |z − x·θ|² is least at x = Re(z·θ̄)/|θ|².
    private static ModeNode? NodeOf(RideModel model, ModeShape shape)
    {
        var (z, theta) = (shape.Heave, shape.Pitch);
        double Amplitude(double x) => (z - (x * theta)).Magnitude;
        var most = Math.Max(Amplitude(model.X[0]), Amplitude(model.X[2]));
        if (!(theta.Magnitude * model.Car.Wheelbase.Si > 1e-9 * most) || most < 1e-9)
        {
            return null;
        }

        var ahead = (z * Complex.Conjugate(theta)).Real / (theta.Magnitude * theta.Magnitude);
        return new ModeNode { Ahead = ahead, BehindFrontAxle = model.X[0] - ahead, Remaining = Amplitude(ahead) / most };
    }
}
