using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Recording;

/// <summary>Works a record out step by step, line by line: what any machine that runs it must give.</summary>
internal static class RecordRun
{
    /// <summary>Raw samples of a pass, as <see cref="PassRun"/> gives them.</summary>
    /// <param name="step">The recorded step.</param>
    /// <param name="road">The road under the wheels.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="timing">The clock.</param>
    /// <exception cref="NotSupportedException">The road jumps.</exception>
    public static double[] Of(StepRecord step, RoadUnderWheels road, double speed, PassTiming timing)
    {
        if (road.HasJump)
        {
            throw new NotSupportedException("A step beside which the road jumps is not recorded.");
        }

        var plan = new RecordPlan(step);
        var lines = step.Record.Lines;
        var pairs = new Lane128[lines.Count];
        for (var i = 0; i < pairs.Length; i++)
        {
            pairs[i] = lines[i].Does switch
            {
                Operation.Constant => Lane128.Of(lines[i].Constant.Front, lines[i].Constant.Rear),
                Operation.Given when lines[i].A == 0 => Lane128.Of(timing.Step),
                Operation.Given => Lane128.Of(step.Given[lines[i].A].Front, step.Given[lines[i].A].Rear),
                _ => default,
            };
        }

        Work(plan.Ahead);
        var n = timing.Samples * timing.StepsPerSample;
        var table = road.Table(speed, timing.Start, timing.Step, n);
        var samples = new double[timing.Samples * Channel.Count];
        var next = new Lane128[plan.States.Count];
        for (var k = 0; k < n; k++)
        {
            for (var i = 0; i < lines.Count; i++)
            {
                if (lines[i].Does == Operation.Road)
                {
                    var (of, side) = (table[(2 * k) + (lines[i].A / 2)], lines[i].A % 2);
                    pairs[i] = Lane128.Of(of.At(side).Value, of.At(2 + side).Value);
                }
            }

            Work(plan.EachStep);
            if (k % timing.StepsPerSample == 0)
            {
                Work(plan.EachSample);
                for (var c = 0; c < Channel.Count; c++)
                {
                    samples[(k / timing.StepsPerSample * Channel.Count) + c] = Record.At(pairs[step.Sample[c]], 0);
                }
            }

            for (var s = 0; s < next.Length; s++)
            {
                next[s] = pairs[plan.States[s].Next];
            }

            for (var s = 0; s < next.Length; s++)
            {
                pairs[plan.States[s].Now] = next[s];
            }
        }

        return samples;

        void Work(IReadOnlyList<int> which)
        {
            foreach (var i in which)
            {
                var line = lines[i];
                pairs[i] = Record.Of(in line, pairs);
            }
        }
    }
}
