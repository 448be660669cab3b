using System.Runtime.CompilerServices;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Responses;

/// <summary>
/// Steps the equations of motion at a fixed step h: Adams–Bashforth of fourth order on the velocities, with the position update that integrates the same
/// cubic through the last four accelerations twice (Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, III.1 and III.10):
/// v += h(55a₀ − 59a₁ + 37a₂ − 9a₃)/24, x += h·v + h²(323a₀ − 264a₁ + 159a₂ − 38a₃)/360.
/// It starts from rest at trim on a flat road, where the past accelerations are exactly zero.
/// </summary>
internal static class PassStepper<TQuad, TLane>
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    /// <summary>Runs <paramref name="outputs"/> recorded samples, <paramref name="perOutput"/> steps apart.</summary>
    /// <param name="c">The cars.</param>
    /// <param name="road">Road heights and rates, two quads a step, at least outputs × perOutput steps.</param>
    /// <param name="outputs">Number of recorded samples.</param>
    /// <param name="perOutput">Steps from one to the next.</param>
    /// <param name="h">Step, s, one per lane (lanes may differ).</param>
    /// <param name="samples">Receives <see cref="Channel.Count"/> lanes per output.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Run(RideConstants<TQuad, TLane> c, ReadOnlySpan<TQuad> road, int outputs, int perOutput, TLane h, Span<TLane> samples)
    {
        var hh = h * h;
        TLane v0 = h * TLane.Of(55.0 / 24.0), v1 = h * TLane.Of(-59.0 / 24.0), v2 = h * TLane.Of(37.0 / 24.0), v3 = h * TLane.Of(-9.0 / 24.0);
        TLane x0 = hh * TLane.Of(323.0 / 360.0), x1 = hh * TLane.Of(-264.0 / 360.0), x2 = hh * TLane.Of(159.0 / 360.0), x3 = hh * TLane.Of(-38.0 / 360.0);
        TQuad V0 = TQuad.All(v0), V1 = TQuad.All(v1), V2 = TQuad.All(v2), V3 = TQuad.All(v3);
        TQuad X0 = TQuad.All(x0), X1 = TQuad.All(x1), X2 = TQuad.All(x2), X3 = TQuad.All(x3), H = TQuad.All(h);
        TLane z = default, theta = default, phi = default, zRate = default, thetaRate = default, phiRate = default;
        TLane z1 = default, z2 = default, z3 = default, t1 = default, t2 = default, t3 = default, p1 = default, p2 = default, p3 = default;
        TQuad u = default, uRate = default, u1 = default, u2 = default, u3 = default;
        TQuad q = default, qRate = default, q1 = default, q2 = default, q3 = default;
        var fluid = (c.Needs & Needs.FluidLink) != 0;
        var at = 0;
        for (var k = 0; k < outputs; k++)
        {
            for (var n = 0; n < perOutput; n++, at += 2)
            {
                RideKernel<TQuad, TLane>.Accelerations(
                    c, z, theta, phi, u, zRate, thetaRate, phiRate, uRate, q, qRate, road[at], road[at + 1], out var z0, out var t0, out var p0, out var u0, out var q0, out var force, out var tyre);
                if (n == 0)
                {
                    var sample = samples.Slice(k * Channel.Count, Channel.Count);
                    Record(sample, 0, z, theta, phi, u, q);
                    Record(sample, Channel.Rates, zRate, thetaRate, phiRate, uRate, qRate);
                    Record(sample, Channel.Accelerations, z0, t0, p0, u0, q0);
                    Corners(sample, Channel.Tyre, tyre);
                    Corners(sample, Channel.Force, force);
                }

                z = TLane.Fma(x0, z0, TLane.Fma(h, zRate, z) + TLane.Fma(x1, z1, TLane.Fma(x2, z2, x3 * z3)));
                theta = TLane.Fma(x0, t0, TLane.Fma(h, thetaRate, theta) + TLane.Fma(x1, t1, TLane.Fma(x2, t2, x3 * t3)));
                phi = TLane.Fma(x0, p0, TLane.Fma(h, phiRate, phi) + TLane.Fma(x1, p1, TLane.Fma(x2, p2, x3 * p3)));
                u = TQuad.Fma(X0, u0, TQuad.Fma(H, uRate, u) + TQuad.Fma(X1, u1, TQuad.Fma(X2, u2, X3 * u3)));
                zRate = TLane.Fma(v0, z0, TLane.Fma(v1, z1, zRate) + TLane.Fma(v2, z2, v3 * z3));
                thetaRate = TLane.Fma(v0, t0, TLane.Fma(v1, t1, thetaRate) + TLane.Fma(v2, t2, v3 * t3));
                phiRate = TLane.Fma(v0, p0, TLane.Fma(v1, p1, phiRate) + TLane.Fma(v2, p2, v3 * p3));
                uRate = TQuad.Fma(V0, u0, TQuad.Fma(V1, u1, uRate) + TQuad.Fma(V2, u2, V3 * u3));
                (z3, z2, z1) = (z2, z1, z0);
                (t3, t2, t1) = (t2, t1, t0);
                (p3, p2, p1) = (p2, p1, p0);
                (u3, u2, u1) = (u2, u1, u0);
                if (fluid)
                {
                    q = TQuad.Fma(X0, q0, TQuad.Fma(H, qRate, q) + TQuad.Fma(X1, q1, TQuad.Fma(X2, q2, X3 * q3)));
                    qRate = TQuad.Fma(V0, q0, TQuad.Fma(V1, q1, qRate) + TQuad.Fma(V2, q2, V3 * q3));
                    (q3, q2, q1) = (q2, q1, q0);
                }
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Record(Span<TLane> sample, int from, TLane z, TLane theta, TLane phi, TQuad wheels, TQuad flow)
    {
        sample[from] = z;
        sample[from + 1] = theta;
        sample[from + 2] = phi;
        Corners(sample, from + Channel.Wheel, wheels);
        sample[from + Channel.Flow] = flow.At(0);
        sample[from + Channel.Flow + 1] = flow.At(1);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Corners(Span<TLane> sample, int from, TQuad values)
    {
        sample[from] = values.At(0);
        sample[from + 1] = values.At(1);
        sample[from + 2] = values.At(2);
        sample[from + 3] = values.At(3);
    }
}
