using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Drives.Planning;

/// <summary>The body's energy of motion read off nonlinear passes.</summary>
internal static class PlankMotion
{
    /// <summary>In the first second after the rear wheels have left, and from the first contact to its end.</summary>
    public static (BodyEnergy After, BodyEnergy Whole) Of(Pass pass)
    {
        var gyration = BodyDirection.Gyration(pass.Model);
        var (heave, rate) = (pass.Heave, pass.PitchRate);
        int At(double t) => Math.Clamp((int)Math.Round((t - pass.Start) / pass.SampleStep), 1, pass.Count - 2);
        var (first, leaves, last) = (At(0.0), At(pass.RearLeaves), At(pass.RearLeaves + PitchSettling.Second));
        return (Between(leaves, last), Between(first, last));

        BodyEnergy Between(int from, int to)
        {
            var (zz, zt, tt) = (0.0, 0.0, 0.0);
            for (var k = from; k < to; k++)
            {
                var (z, u) = ((heave[k + 1] - heave[k - 1]) / (2.0 * pass.SampleStep), gyration * rate[k]);
                (zz, zt, tt) = (zz + (z * z), zt + (z * u), tt + (u * u));
            }

            var n = Math.Max(to - from, 1);
            return new(zz / n, zt / n, tt / n);
        }
    }
}
