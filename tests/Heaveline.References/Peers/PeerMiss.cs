using Heaveline.Passes;

namespace Heaveline.References.Peers;

/// <summary>
/// How far samples lie from a result file, each kind of quantity over its own peak (tyre loads over the largest change from static).
/// </summary>
internal static class PeerMiss
{
    internal static IReadOnlyList<(string Kind, double Miss)> Of(PeerCase peer, double[] samples, double[][] rows)
    {
        Assert.Equal(peer.Outputs, rows.Length);
        var kinds = new List<(string, double)>();
        void Add(string kind, int column, int count, Func<int, int, double> ours, Func<int, double> still)
        {
            var (miss, peak) = (0.0, 0.0);
            for (var k = 0; k < rows.Length; k++)
            {
                for (var i = 0; i < count; i++)
                {
                    miss = Math.Max(miss, Math.Abs(ours(k, i) - rows[k][column + i]));
                    peak = Math.Max(peak, Math.Abs(rows[k][column + i] - still(i)));
                }
            }

            // Zero by symmetry in the file: the difference itself.
            kinds.Add((kind, peak < 1e-10 ? miss : miss / peak));
        }

        double At(int k, int channel) => samples[(k * Channel.Count) + channel];
        double Load(int k, int i) => peer.Numbers.TrimLoad[i] + At(k, Channel.Tyre + i);
        Assert.All(Enumerable.Range(0, rows.Length), k => Assert.Equal(k * peer.OutputStep, rows[k][0], 1e-9));
        Add("z", 1, 1, (k, _) => At(k, Channel.Heave), _ => 0.0);
        Add("theta", 2, 1, (k, _) => At(k, Channel.Pitch), _ => 0.0);
        if (peer.IsHalf)
        {
            Add("u", 3, 2, (k, i) => At(k, Channel.Wheel + (2 * i)), _ => 0.0);
            Add("zdd", 5, 1, (k, _) => At(k, Channel.Accelerations), _ => 0.0);
            Add("thetadd", 6, 1, (k, _) => At(k, Channel.Accelerations + 1), _ => 0.0);
            Add("load", 7, 2, (k, i) => Load(k, 2 * i) + Load(k, (2 * i) + 1), i => peer.Numbers.TrimLoad[2 * i] * 2.0);
        }
        else
        {
            Add("phi", 3, 1, (k, _) => At(k, Channel.Roll), _ => 0.0);
            Add("u", 4, 4, (k, i) => At(k, Channel.Wheel + i), _ => 0.0);
            Add("zdd", 8, 1, (k, _) => At(k, Channel.Accelerations), _ => 0.0);
            Add("thetadd", 9, 1, (k, _) => At(k, Channel.Accelerations + 1), _ => 0.0);
            Add("phidd", 10, 1, (k, _) => At(k, Channel.Accelerations + 2), _ => 0.0);
            Add("load", 11, 4, Load, i => peer.Numbers.TrimLoad[i]);
        }

        return kinds;
    }
}
