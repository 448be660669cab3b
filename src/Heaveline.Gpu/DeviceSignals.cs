using Heaveline.Gpu.Kernels;
using Heaveline.Measures;
using Heaveline.Numerics;

namespace Heaveline.Gpu;

/// <summary>What a launch is asked, as the type that its kernel is compiled for, and the shares that are its runs' own.</summary>
/// <param name="Asked">The type, an <see cref="IDeviceSignals{TSelf, T}"/>.</param>
/// <param name="Shares">Share p of run i at p·runs + i.</param>
/// <param name="Room">Numbers of shared memory that a thread needs.</param>
internal sealed record DeviceSignals<T>(Type Asked, T[] Shares, int Room)
    where T : unmanaged, ILane<T>
{
    /// <summary>For some runs.</summary>
    /// <param name="questions">What is asked.</param>
    /// <param name="shares">All shares, part p of run i at p·runs + i.</param>
    /// <param name="bases">What the signals count from, signal s of run i at s·runs + i.</param>
    /// <param name="runs">Number of runs.</param>
    public static DeviceSignals<T> Of(DeviceQuestions questions, T[] shares, T[] bases, int runs)
    {
        var (kinds, firsts) = (new int[questions.Parts], new bool[questions.Signals]);
        ParallelLoop.Each(kinds.Length, p =>
        {
            var row = shares.AsSpan(p * runs, runs);
            kinds[p] = CarNumbers<T>.AreAll(row, T.Of(1.0)) ? 1 : CarNumbers<T>.AreAll(row, T.Of(-1.0)) ? 2 : 0;
        });
        ParallelLoop.Each(firsts.Length, s => firsts[s] = !CarNumbers<T>.AreAll(bases.AsSpan(s * runs, runs), T.Of(0.0)));
        var own = new List<int>();
        var all = new List<Type[]>();
        var part = 0;
        for (var s = 0; s < firsts.Length; s++)
        {
            var parts = questions.Channels(s).Select(channel => (Channel: channel, Part: part++)).ToArray();
            var before = parts.Where(p => DeviceSample<T>.IsBefore(p.Channel)).ToArray();
            var after = parts.Where(p => !DeviceSample<T>.IsBefore(p.Channel)).ToArray();
            own.AddRange(before.Concat(after).Select(p => p.Part).Where(p => kinds[p] == 0));
            all.Add([Fixed(firsts[s] ? 1 : 0), Parts(before), Parts(after), Asked(s)]);
        }

        var asked = typeof(NoSignal<T>);
        for (var s = all.Count - 1; s >= 0; s--)
        {
            asked = Made(typeof(SignalAsked<,,,,,>), [.. all[s], asked]);
        }

        var compressed = new T[own.Count * runs];
        ParallelLoop.Each(own.Count, p => shares.AsSpan(own[p] * runs, runs).CopyTo(compressed.AsSpan(p * runs, runs)));
        return new(asked, compressed, DeviceRoom<T>.SizeOf(
            questions.Signals, questions.Questions.Length, own.Count + firsts.Count(first => first)));

        Type Parts((int Channel, int Part)[] some) => some.Reverse().Aggregate(
            typeof(NoPart<T>), (rest, p) => Made(typeof(SignalPart<,,,>), Fixed(p.Channel), Fixed(kinds[p.Part]), rest));

        Type Asked(int signal)
        {
            var chain = typeof(NoQuestion<T>);
            for (var q = questions.Questions.Length - 1; q >= 0; q--)
            {
                if (questions.SignalOf(q) == signal)
                {
                    var open = questions.Questions[q].Kind switch
                    {
                        CurveQuestionKind.Squares => typeof(SquaresAsked<,,>),
                        CurveQuestionKind.Nothing => typeof(NothingAsked<,,>),
                        _ => typeof(RangeAsked<,,>),
                    };
                    chain = Made(open, Fixed(q), chain);
                }
            }

            return chain;
        }
    }

    private static Type Made(Type open, params Type[] arguments) => open.MakeGenericType([typeof(T), .. arguments]);

    /// <summary>The type that says a number.</summary>
    public static Type Fixed(int value) => value == 0
        ? typeof(FixedZero)
        : (value % 2 == 0 ? typeof(FixedTwice<>) : typeof(FixedTwiceAndOne<>)).MakeGenericType(Fixed(value / 2));
}
