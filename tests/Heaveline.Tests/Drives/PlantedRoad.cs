using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Tests.Drives;

/// <summary>
/// A linear half car, per unit of sprung mass, driven in time over a rough road with bumps of which everything is known: standing first, then braking
/// and turning once, then one bump every twelve seconds or later.
/// </summary>
internal sealed record PlantedRoad
{
    public const double Step = 0.0025;
    private const double Grid = 0.02;
    private const double Between = 12.0;
    private const double Begin = 40.0;

    /// <summary>Bumps in turn, and the speed (m/s) at each.</summary>
    public required (PlantedBump Bump, double Speed)[] Bumps { get; init; }

    /// <summary>How much longer than twelve seconds it takes to each bump from the one before, s; none: no longer.</summary>
    public double[] Longer { get; init; } = [];

    /// <summary>Density of the road's heights at 0.1 cycles a metre, m³.</summary>
    public double Roughness { get; init; } = 16e-6;

    public double Wheelbase { get; init; } = 2.7;

    public double Front { get; init; } = 1.25;

    public double Rear { get; init; } = 1.4;

    public double FrontDamping { get; init; } = 0.28;

    public double RearDamping { get; init; } = 0.26;

    public double Index { get; init; } = 0.98;

    public double FrontShare { get; init; } = 0.55;

    public double Behind { get; init; } = 1.45;

    public double Drift { get; init; } = 0.02;

    public double Tail { get; init; } = 8.0;

    public ulong Seed { get; init; } = 1;

    /// <summary>Speed and yaw rate all along, m/s and rad/s, and the instants at which the front wheels are to meet the bumps.</summary>
    public (double[] Speed, double[] Yaw, double[] Onsets) Plan()
    {
        var onsets = Onsets;
        var n = (int)((onsets[^1] + 6.0 + Tail) / Step);
        var (speed, yaw) = (new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            (speed[i], yaw[i]) = Wanted(i * Step, onsets);
        }

        return (Smooth(Smooth(speed)), Smooth(Smooth(yaw)), onsets);
    }

    private double[] Onsets
    {
        get
        {
            var (result, at) = (new double[Bumps.Length], Begin - 6.0);
            for (var k = 0; k < result.Length; k++)
            {
                at += Between + (k < Longer.Length ? Longer[k] : 0.0);
                result[k] = at;
            }

            return result;
        }
    }

    /// <summary>The motion, with the instants at which the front wheels meet the bumps.</summary>
    public (PlantedMotion Motion, double[] Onsets) Driven()
    {
        var (speed, yaw, onsets) = Plan();
        var n = speed.Length;
        var place = new double[n];
        for (var i = 1; i < n; i++)
        {
            place[i] = place[i - 1] + (0.5 * Step * (speed[i - 1] + speed[i]));
        }

        double[] at = [.. onsets.Select(t => place[(int)(t / Step)])];
        var road = Rough(place[^1] + 10.0);
        double Height(double x)
        {
            var p = Math.Max(x + 5.0, 0.0) / Grid;
            var k = Math.Min((int)p, road.Length - 2);
            var height = road[k] + ((p - k) * (road[k + 1] - road[k]));
            for (var b = 0; b < at.Length; b++)
            {
                height += x > at[b] && x < at[b] + Bumps[b].Bump.Length ? Bumps[b].Bump.At(x - at[b]) : 0.0;
            }

            return height;
        }

        var (front, rear) = (new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            (front[i], rear[i]) = (Height(place[i]), Height(place[i] - Wheelbase));
        }

        var (vertical, pitch, rate) = Moved(front, rear);
        return (
            new PlantedMotion { Step = Step, Speed = speed, Yaw = yaw, Vertical = vertical, Pitch = pitch, PitchRate = rate, Seed = Seed }, onsets);
    }

    private (double Speed, double Yaw) Wanted(double t, double[] onsets)
    {
        // Standing, off, a firm brake, two bends; then the bumps.
        if (t < Begin)
        {
            return (t < 6.0 ? 0.0 : t < 16.0 ? 9.0 : t < 20.0 ? 3.0 : 8.0, t is > 25.0 and < 29.0 ? 0.22 : t is > 31.0 and < 35.0 ? -0.22 : 0.0);
        }

        var k = Math.Max(Array.FindLastIndex(onsets, o => o - 6.0 <= t), 0);
        var own = t - onsets[k];
        var drift = Drift * SplitMix.Normals(Seed + 77, 2UL * (ulong)k).First;
        return (Bumps[k].Speed * (1.0 + (drift * Math.Clamp(own, -3.0, 4.0))), 0.0);
    }

    // Means over a second and a half.
    private static double[] Smooth(double[] values)
    {
        var reach = (int)(0.75 / Step);
        var sums = new double[values.Length + 1];
        for (var i = 0; i < values.Length; i++)
        {
            sums[i + 1] = sums[i] + values[i];
        }

        return [.. Enumerable.Range(0, values.Length).Select(i =>
        {
            var (from, to) = (Math.Max(0, i - reach), Math.Min(values.Length, i + reach + 1));
            return (sums[to] - sums[from]) / (to - from);
        })];
    }

    // Slopes without colour make heights of the density G·(0.1/n)²; what is longer than some 60 m is left out.
    private double[] Rough(double length)
    {
        var n = (int)((length + 20.0) / Grid);
        var deviation = 2.0 * Math.PI * 0.1 * Math.Sqrt(Roughness / (2.0 * Grid));
        var result = new double[n];
        for (var i = 1; i < n; i++)
        {
            var slope = deviation * SplitMix.Normals(Seed + 99, 2UL * (ulong)i).First;
            result[i] = (result[i - 1] * (1.0 - (Grid / 10.0))) + (slope * Grid);
        }

        return result;
    }

    private (double[] Vertical, double[] Pitch, double[] Rate) Moved(double[] front, double[] rear)
    {
        const double hop = 10.8, unsprung = 0.13, arm = 0.25;
        var (b, c) = ((1.0 - FrontShare) * Wheelbase, FrontShare * Wheelbase);
        double[] shares = [FrontShare, 1.0 - FrontShare];
        double[] arms = [b, -c];
        double[] omegas = [2.0 * Math.PI * Front, 2.0 * Math.PI * Rear];
        double[] dampings = [FrontDamping, RearDamping];
        var (mass, k, d, input) = (Matrix<double>.Build.Dense(4, 4), Matrix<double>.Build.Dense(4, 4), Matrix<double>.Build.Dense(4, 4),
            Matrix<double>.Build.Dense(4, 2));
        (mass[0, 0], mass[1, 1]) = (1.0, Index * b * c);
        for (var axle = 0; axle < 2; axle++)
        {
            var travel = Vector<double>.Build.Dense(4);
            (travel[0], travel[1], travel[2 + axle]) = (-1.0, arms[axle], 1.0);
            k += shares[axle] * omegas[axle] * omegas[axle] * travel.OuterProduct(travel);
            d += 2.0 * dampings[axle] * shares[axle] * omegas[axle] * travel.OuterProduct(travel);
            mass[2 + axle, 2 + axle] = unsprung * shares[axle];
            var tyre = unsprung * shares[axle] * Math.Pow(2.0 * Math.PI * hop, 2.0);
            k[2 + axle, 2 + axle] += tyre;
            input[2 + axle, axle] = tyre;
        }

        k[1, 1] -= PlantedMotion.Gravity * arm;
        var inverse = mass.Inverse();
        var whole = Matrix<double>.Build.Dense(10, 10);
        whole.SetSubMatrix(0, 4, Matrix<double>.Build.DenseIdentity(4));
        whole.SetSubMatrix(4, 0, -inverse * k);
        whole.SetSubMatrix(4, 4, -inverse * d);
        whole.SetSubMatrix(4, 8, inverse * input);
        var step = MatrixExponential.Of(whole * Step).ToArray();
        var accelerations = whole.ToArray();
        var (n, state) = (front.Length, new double[10]);
        var (vertical, pitch, rate) = (new double[n], new double[n], new double[n]);
        var next = new double[10];
        for (var i = 0; i < n; i++)
        {
            (state[8], state[9]) = (front[i], rear[i]);
            var (heave, turn) = (0.0, 0.0);
            for (var j = 0; j < 10; j++)
            {
                heave += accelerations[4, j] * state[j];
                turn += accelerations[5, j] * state[j];
            }

            (vertical[i], pitch[i], rate[i]) = (heave - ((b - Behind) * turn), state[1], state[5]);
            if (i + 1 < n)
            {
                (state[8], state[9]) = (0.5 * (front[i] + front[i + 1]), 0.5 * (rear[i] + rear[i + 1]));
            }

            for (var r = 0; r < 8; r++)
            {
                next[r] = 0.0;
                for (var j = 0; j < 10; j++)
                {
                    next[r] += step[r, j] * state[j];
                }
            }

            next.AsSpan(0, 8).CopyTo(state);
        }

        return (vertical, pitch, rate);
    }
}
