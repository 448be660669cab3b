using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Cars;

/// <summary>A damper's table from its run in a rig that moves it to and fro.</summary>
public static class DamperRig
{
    // Below this many samples a cycle's mean and its medians are chance (common practice, no source).
    private const int FewestSamples = 200;

    // A bin with fewer samples has no median worth the name and joins the next (common practice, no source).
    private const int FewestInBin = 8;

    // The mean force is the gas force only of a damper as hard one way as the other. Its turning points tell: farther from them than this share of
    // its weaker side, the mean is the difference of both sides (common practice, no source).
    private const double Uneven = 0.2;

    /// <summary>
    /// The table of a run. The gas force is taken off; each side is cut into bins of equal velocity, the medians of velocity and force are its
    /// points, and pooling adjacent violators makes them rise. In place of the slowest bin stands a straight line to zero: there the damper turns
    /// round, and closing and opening branch lie so far apart that a median is of neither.
    /// </summary>
    /// <param name="velocity">Velocity at the damper, closing positive, m/s, in the order of time at one sampling rate, shape (n).</param>
    /// <param name="force">Force on the damper, closing positive, N, shape (n).</param>
    /// <param name="step">Time between samples, s.</param>
    /// <param name="gasForce">Force at standstill, N; null: the mean over whole cycles, which suits a damper as hard closing as opening.</param>
    /// <param name="bins">Bins on each side, 3 to 50.</param>
    /// <exception cref="RefusedValueException">
    /// Too few samples, no movement both ways, force against the velocity, or a mean force that cannot be the gas force.
    /// </exception>
    public static RigTable TableFrom(IReadOnlyList<double> velocity, IReadOnlyList<double> force, double step, double? gasForce = null, int bins = 12)
    {
        Check(velocity, force, step, bins);
        var run = RigRun.Of(velocity, force);
        double[] v = [.. velocity.Skip(run.First).Take(run.Last - run.First)];
        double[] whole = [.. force.Skip(run.First).Take(v.Length)];
        var gas = gasForce ?? whole.Average();
        double[] f = [.. whole.Select(one => one - gas)];
        RefuseDriving(v, f);
        var (bump, rebound) = (Side(v, f, bins, 1), Side(v, f, bins, -1));
        var off = Math.Abs(gas - run.TurningForce);
        if (gasForce is null && off > Uneven * Math.Min(bump.Force[^1], rebound.Force[^1]))
        {
            throw new RefusedValueException(
                "mean force of the damper run",
                $"{gas:F0} N, but it turns round about {run.TurningForce:F0} N",
                "the gas force",
                "This damper is harder one way: give the force that it shows at standstill as gas force.");
        }

        var law = new TableDamper(bump, rebound);
        double[] table = [.. v.Select(law.Whole.ForceAt)];
        return new RigTable
        {
            Law = law,
            GasForce = gas,
            TurningForce = run.TurningForce,
            HysteresisHalfWidth = run.HalfWidth,
            Scatter = Math.Sqrt(f.Zip(table, (measured, said) => (measured - said) * (measured - said)).Average()),
            Work = step * f.Zip(v, (n, speed) => n * speed).Sum(),
            TableWork = step * table.Zip(v, (n, speed) => n * speed).Sum(),
            Cycles = run.Cycles,
            FastestBump = v.Max(),
            FastestRebound = -v.Min(),
        };
    }

    private static void Check(IReadOnlyList<double> velocity, IReadOnlyList<double> force, double step, int bins)
    {
        if (velocity.Count != force.Count || velocity.Count < FewestSamples)
        {
            throw new RefusedValueException(
                "damper run",
                $"{velocity.Count} velocities and {force.Count} forces",
                $"as many of both, at least {FewestSamples}",
                "Record several cycles with 50 samples or more in each.");
        }

        for (var i = 0; i < velocity.Count; i++)
        {
            _ = Checked.Within(velocity[i], -20.0, 20.0, "Give the velocity in m/s, without gaps.", "DamperVelocity");
            _ = Checked.Within(force[i], -1e6, 1e6, "Give the force in N, without gaps.", "DamperForce");
        }

        _ = Checked.Within(step, 1e-6, 1.0, "Give the time between two samples in seconds.", "TimeStep");
        _ = Checked.Within(bins, 3.0, 50.0, "12 suit most runs.", "NumberOfBins");
    }

    // A damper takes work out of every stroke, both ways.
    private static void RefuseDriving(double[] v, double[] f)
    {
        foreach (var (side, name) in new[] { (1, "closing"), (-1, "opening") })
        {
            var power = v.Zip(f, (speed, n) => speed * side > 0.0 ? speed * n : 0.0).Sum();
            if (!(power > 0.0))
            {
                throw new RefusedValueException(
                    $"force while {name}",
                    "with the movement",
                    "against it: a damper takes work out",
                    "Give both velocity and force closing positive; check the gas force.");
            }
        }
    }

    private static ForceTable Side(double[] v, double[] f, int bins, int side)
    {
        (double Speed, double Force)[] samples = [.. v.Zip(f, (speed, n) => (side * speed, side * n)).Where(one => one.Item1 > 0.0)];
        var width = samples.Max(one => one.Speed) / bins;
        var (speeds, forces, weights) = (new List<double>(), new List<double>(), new List<double>());
        var open = new List<(double Speed, double Force)>();
        foreach (var bin in samples
            .Where(one => one.Speed > width).GroupBy(one => Math.Min((int)(one.Speed / width), bins - 1)).OrderBy(group => group.Key))
        {
            open.AddRange(bin);
            if (open.Count >= FewestInBin)
            {
                speeds.Add(Middle.Of([.. open.Select(one => one.Speed)]));
                forces.Add(Middle.Of([.. open.Select(one => one.Force)]));
                weights.Add(open.Count);
                open.Clear();
            }
        }

        // Raising what lies below zero keeps the fit the nearest one that neither falls nor drives (the bound commutes with pooling: Barlow et al.).
        double[] rising = [.. Isotonic.Fit(forces.ToArray(), weights.ToArray()).Select(n => Math.Max(0.0, n))];
        return speeds.Count >= 2 && rising[^1] > 0.0
            ? new ForceTable(speeds, rising)
            : throw new RefusedValueException(
                $"{(side > 0 ? "closing" : "opening")} side of the damper run",
                $"{speeds.Count} usable velocities",
                "at least 2 with a force against the movement",
                "Drive the damper faster, longer, or sample it more often.");
    }
}
