using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>The whole cycles of a damper's run to and fro, and the forces at which it turned round.</summary>
internal sealed class RigRun
{
    // A stroke counts once it has reached this share of the fastest velocity: noise about standstill is no stroke (common practice, no source).
    private const double Stroke = 0.2;

    private RigRun(int first, int last, double[] afterClosing, double[] afterOpening, double fastest)
    {
        (First, Last) = (first, last);
        Cycles = afterClosing.Length - 1;
        Fastest = fastest;
        TurningForce = 0.5 * (Middle.Of(afterClosing) + Middle.Of(afterOpening));
        HalfWidth = 0.5 * (Middle.Of(afterClosing) - Middle.Of(afterOpening));
    }

    /// <summary>First sample of the whole cycles.</summary>
    public int First { get; }

    /// <summary>First sample after them.</summary>
    public int Last { get; }

    public int Cycles { get; }

    public double Fastest { get; }

    public double TurningForce { get; }

    public double HalfWidth { get; }

    /// <exception cref="RefusedValueException">The run has no two turns from closing to opening.</exception>
    public static RigRun Of(IReadOnlyList<double> velocity, IReadOnlyList<double> force)
    {
        var fastest = velocity.Max(Math.Abs);
        var (closing, opening) = (new List<double>(), new List<double>());
        var turns = new List<int>();
        var side = 0;
        for (var i = 0; i < velocity.Count; i++)
        {
            if (fastest == 0.0 || Math.Abs(velocity[i]) < Stroke * fastest)
            {
                continue;
            }

            var now = Math.Sign(velocity[i]);
            if (side != 0 && now != side)
            {
                var (turn, turningForce) = Turn(velocity, force, i, side);
                (side > 0 ? closing : opening).Add(turningForce);
                if (side > 0)
                {
                    turns.Add(turn);
                }
            }

            side = now;
        }

        return turns.Count >= 2
            ? new RigRun(turns[0], turns[^1], [.. closing], [.. opening], fastest)
            : throw new RefusedValueException(
                "damper run",
                $"{turns.Count} turns from closing to opening",
                "at least one whole cycle to and fro",
                "Drive the damper both ways, closing positive, and keep the samples in the order of time.");
    }

    // Last sample on the old side and first on the new one; the force between them where the straight line of the velocity passes zero.
    private static (int Index, double Force) Turn(IReadOnlyList<double> velocity, IReadOnlyList<double> force, int i, int side)
    {
        var before = i;
        while (velocity[before] * side <= 0.0)
        {
            before--;
        }

        var after = before + 1;
        while (velocity[after] * side >= 0.0)
        {
            after++;
        }

        var share = velocity[before] / (velocity[before] - velocity[after]);
        return (after, force[before] + (share * (force[after] - force[before])));
    }
}
