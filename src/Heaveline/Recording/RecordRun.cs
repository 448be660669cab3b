using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Recording;

/// <summary>Works a record out step by step, line by line: what any machine that runs it must give.</summary>
internal static class RecordRun
{
    /// <summary>Numbers that depend on nothing but what is given.</summary>
    public static double[] Of(TrimRecord trim, ReadOnlySpan<double> given) => Of(trim.Record, trim.Numbers, given);

    /// <summary>The same of any record.</summary>
    public static double[] Of(Record record, IReadOnlyList<int> numbers, ReadOnlySpan<double> given)
    {
        var pairs = Sources(record, given);
        Work(record, new RecordPlan(new StepRecord(record, [], numbers)).Ahead, pairs);
        return [.. numbers.Select(line => Record.At(pairs[line], 0))];
    }

    /// <summary>Samples of a pass: of the stepper's record as <see cref="PassRun"/> gives them.</summary>
    /// <param name="step">The recorded step.</param>
    /// <param name="given">What is given to it, as <see cref="LiveGiven"/> says; the step is the clock's.</param>
    /// <param name="road">The road under the wheels.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="timing">The clock.</param>
    /// <exception cref="NotSupportedException">The road jumps.</exception>
    public static double[] Of(StepRecord step, ReadOnlySpan<double> given, RoadUnderWheels road, double speed, PassTiming timing)
    {
        if (road.HasJump)
        {
            throw new NotSupportedException("A step beside which the road jumps is not recorded.");
        }

        var plan = new RecordPlan(step);
        var (lines, count) = (step.Record.Lines, step.Sample.Count);
        var pairs = Sources(step.Record, [timing.Step, .. given[1..]]);
        Work(step.Record, plan.Ahead, pairs);
        var n = timing.Samples * timing.StepsPerSample;
        var table = road.Table(speed, timing.Start, timing.Step, n);
        var samples = new double[timing.Samples * count];
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

            Work(step.Record, plan.EachStep, pairs);
            if (k % timing.StepsPerSample == 0)
            {
                Work(step.Record, plan.EachSample, pairs);
                for (var c = 0; c < count; c++)
                {
                    samples[(k / timing.StepsPerSample * count) + c] = Record.At(pairs[step.Sample[c]], 0);
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
    }

    /// <summary>The answers to two questions side by side, by their fold.</summary>
    /// <param name="fold">The fold.</param>
    /// <param name="given">What is given to it: the last sample's number and both stretches.</param>
    /// <param name="one">The samples of the one question.</param>
    /// <param name="other">Those of the other.</param>
    /// <param name="apart">How many samples apart two values are that are compared.</param>
    public static (double One, double Other)[] Of(FoldRecord fold, ReadOnlySpan<double> given, double[] one, double[] other, int apart)
    {
        var (plan, pairs, lines) = (fold.Plan, Sources(fold.Record, given), fold.Record.Lines);
        Lane128 At(int k) => k >= 0 && k < one.Length ? Lane128.From([one[k], other[k]]) : default;
        var (now, next) = (fold.States.Select(state => state.Now).ToArray(), new Lane128[fold.States.Count]);
        (pairs[now[0]], pairs[now[1]], pairs[now[2]], pairs[now[3]]) = (Lane128.Of(apart), At(apart - 1), At(apart), At(apart + 1));
        for (var i = FoldRecord.Answers; i < now.Length; i++)
        {
            pairs[now[i]] = Lane128.Of(fold.Begin[i - FoldRecord.Answers]);
        }

        Work(fold.Record, plan.Ahead, pairs);
        for (var k = apart; k + (fold.Reach > 0 ? 1 : 0) < one.Length; k++)
        {
            for (var i = 0; i < lines.Count; i++)
            {
                pairs[i] = lines[i].Does == Operation.Road ? At(lines[i].A == 0 ? k + fold.Reach : k - apart) : pairs[i];
            }

            Work(fold.Record, plan.EachStep, pairs);
            foreach (var (state, i) in fold.States.Select((state, i) => (state, i)))
            {
                next[i] = pairs[state.Next];
            }

            for (var i = 0; i < now.Length; i++)
            {
                pairs[now[i]] = next[i];
            }
        }

        return [.. now.Skip(FoldRecord.Answers).Select(line => (Record.At(pairs[line], 0), Record.At(pairs[line], 1)))];
    }

    private static Lane128[] Sources(Record record, ReadOnlySpan<double> given)
    {
        var pairs = new Lane128[record.Lines.Count];
        for (var i = 0; i < pairs.Length; i++)
        {
            var line = record.Lines[i];
            pairs[i] = line.Does switch
            {
                Operation.Constant => Lane128.Of(line.Constant.Front, line.Constant.Rear),
                Operation.Given => Lane128.Of(given[line.A]),
                _ => default,
            };
        }

        return pairs;
    }

    private static void Work(Record record, IReadOnlyList<int> which, Lane128[] pairs)
    {
        foreach (var i in which)
        {
            var line = record.Lines[i];
            pairs[i] = Record.Of(in line, pairs);
        }
    }
}
