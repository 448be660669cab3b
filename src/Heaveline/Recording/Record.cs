using Heaveline.Numerics;

namespace Heaveline.Recording;

/// <summary>
/// What was done to numbers, line by line: equal lines are written once, constants are worked out, and what changes nothing is left out. Each
/// number that is left out takes all numbers as finite: a run that grows without bound is no run.
/// </summary>
/// <remarks>Made by one thread, by lines that run on <see cref="RecordLane"/> while it is <see cref="Begin">begun</see>.</remarks>
internal sealed class Record
{
    /// <summary>The line that is zero: what cleared memory holds.</summary>
    public const int Zero = 0;

    // Lanes are plain numbers in memory and cannot hold whose they are.
    [ThreadStatic]
    private static Record? writing;

    private readonly List<RecordedLine> lines = [];

    // Whether both places of a line are the same for certain.
    private readonly List<bool> even = [];
    private readonly Dictionary<RecordedLine, int> known = [];
    private readonly Func<int, int?>? given;
    private readonly List<double>? heard;
    private int numbers;

    /// <param name="given">
    /// Which of the car's numbers, counted as they are met, is given from outside, and as which; the others are constants. Null: none is.
    /// </param>
    public Record(Func<int, int?>? given = null)
    {
        this.given = given;
        Add(RecordedLine.Of(0.0, 0.0));
    }

    private Record(List<double> heard) => this.heard = heard;

    /// <summary>Its lines; each reads only such as stand before it.</summary>
    public IReadOnlyList<RecordedLine> Lines => lines;

    /// <summary>The record that this thread writes.</summary>
    /// <exception cref="InvalidOperationException">None is begun.</exception>
    public static Record Writing => writing ?? throw new InvalidOperationException("A lane that records has no record to write to.");

    /// <summary>The car's numbers in the order in which some lines meet them; nothing else that they do is noted.</summary>
    public static double[] Heard(Action lines)
    {
        var heard = new List<double>();
        using var writing = new Record(heard).Begin();
        lines();
        return [.. heard];
    }

    /// <summary>What this thread's recording lanes do is written here until what is returned is disposed of.</summary>
    public IDisposable Begin()
    {
        var before = writing;
        writing = this;
        return new Ending(before);
    }

    public int Constant(double front, double rear) => heard is null ? Add(RecordedLine.Of(front, rear)) : Zero;

    /// <summary>A number of the car.</summary>
    public int Number(double value)
    {
        if (heard is not null)
        {
            heard.Add(value);
            return Zero;
        }

        return given?.Invoke(numbers++) is { } from ? Source(Operation.Given, from) : Constant(value, value);
    }

    /// <summary>Counts the car's numbers from the first again: the same lines are about to meet them once more.</summary>
    public void Again() => numbers = 0;

    /// <summary>A pair from outside.</summary>
    public int Source(Operation from, int number) => heard is null ? Add(new(from, number)) : Zero;

    public int Sum(int a, int b)
    {
        if (a == Zero || b == Zero)
        {
            return a == Zero ? b : a;
        }

        return lines[b].Does == Operation.Negative ? Difference(a, lines[b].A)
            : lines[a].Does == Operation.Negative ? Difference(b, lines[a].A)
            : Worked(Operation.Add, Math.Min(a, b), Math.Max(a, b));
    }

    public int Difference(int a, int b) =>
        b == Zero ? a
        : a == Zero ? Negative(b)
        : a == b ? Zero
        : lines[b].Does == Operation.Negative ? Sum(a, lines[b].A)
        : Worked(Operation.Less, a, b);

    public int Product(int a, int b)
    {
        if (a == Zero || b == Zero)
        {
            return Zero;
        }

        return Is(a, 1.0) ? b : Is(b, 1.0) ? a : Is(a, -1.0) ? Negative(b) : Is(b, -1.0) ? Negative(a)
            : Worked(Operation.Times, Math.Min(a, b), Math.Max(a, b));
    }

    public int Quotient(int a, int b) => a == Zero ? Zero : Is(b, 1.0) ? a : Worked(Operation.Over, a, b);

    /// <summary>a·b + c with one rounding where whoever runs it has such.</summary>
    public int Fused(int a, int b, int c)
    {
        if (a == Zero || b == Zero)
        {
            return c;
        }

        return c == Zero ? Product(a, b)
            : Is(a, 1.0) ? Sum(b, c) : Is(b, 1.0) ? Sum(a, c)
            : Is(a, -1.0) ? Difference(c, b) : Is(b, -1.0) ? Difference(c, a)
            : Add(new(Operation.Fused, Math.Min(a, b), Math.Max(a, b), c));
    }

    public int Negative(int a) => a == Zero ? Zero : lines[a].Does == Operation.Negative ? lines[a].A : Worked(Operation.Negative, a);

    public int Larger(int a, int b) => a == b ? a : Worked(Operation.Larger, a, b);

    public int Smaller(int a, int b) => a == b ? a : Worked(Operation.Smaller, a, b);

    public int Root(int a) => Worked(Operation.Root, a);

    public int Power(int a, int b)
    {
        if (heard is not null)
        {
            return Zero;
        }

        if (Is(b, 1.0) || b == Zero)
        {
            return b == Zero ? Constant(1.0, 1.0) : a;
        }

        // Powers are dear: where the base is held above a floor, that of the floor itself is known.
        var held = lines[a];
        return held.Does == Operation.Larger && lines[held.B].Does == Operation.Constant
            ? Worked(Operation.PowerAbove, a, b, held.B, Power(held.B, b))
            : Worked(Operation.Power, a, b);
    }

    /// <summary>Where a ≤ limit, then; elsewhere, otherwise.</summary>
    public int Choice(int a, int limit, int then, int otherwise) =>
        then == otherwise ? then : Worked(Operation.Choice, a, limit, then, otherwise);

    public int Exchanged(int a) => IsEven(a) ? a : lines[a].Does switch
    {
        Operation.Exchanged => lines[a].A,
        Operation.Joined => Joined(lines[a].B, lines[a].A),
        _ => Worked(Operation.Exchanged, a),
    };

    public int First(int a) => IsEven(a) ? a : lines[a].Does == Operation.Joined ? First(lines[a].A) : Worked(Operation.First, a);

    public int Second(int a) => IsEven(a) ? a : lines[a].Does == Operation.Joined ? First(lines[a].B) : Worked(Operation.Second, a);

    public int Joined(int a, int b) => a == b ? First(a) : Worked(Operation.Joined, a, b);

    /// <summary>Whether both are known, and the one is above the other nowhere.</summary>
    public bool IsNowhereAbove(int a, int b) =>
        heard is null && lines[a].Does == Operation.Constant && lines[b].Does == Operation.Constant && !Lane128.AnyAbove(PairOf(a), PairOf(b));

    /// <summary>One line worked out.</summary>
    /// <param name="line">The line, no source.</param>
    /// <param name="pairs">What the lines before it gave.</param>
    public static Lane128 Of(in RecordedLine line, ReadOnlySpan<Lane128> pairs)
    {
        var a = pairs[line.A];
        return line.Does switch
        {
            Operation.Add => a + pairs[line.B],
            Operation.Less => a - pairs[line.B],
            Operation.Times => a * pairs[line.B],
            Operation.Over => a / pairs[line.B],
            Operation.Negative => -a,
            Operation.Fused => Lane128.Fma(a, pairs[line.B], pairs[line.C]),
            Operation.Larger => Lane128.Max(a, pairs[line.B]),
            Operation.Smaller => Lane128.Min(a, pairs[line.B]),
            Operation.Root => Lane128.Sqrt(a),
            Operation.Power or Operation.PowerAbove => Lane128.Power(a, pairs[line.B]),
            Operation.Choice => Lane128.WhereAtMost(a, pairs[line.B], pairs[line.C], pairs[line.D]),
            Operation.Exchanged => Lane128.Swap(a),
            Operation.First => Lane128.Of(At(a, 0)),
            Operation.Second => Lane128.Of(At(a, 1)),
            Operation.Joined => Lane128.Of(At(a, 0), At(pairs[line.B], 0)),
            _ => throw new InvalidOperationException($"{line.Does} is no operation."),
        };
    }

    /// <summary>One number of a pair.</summary>
    public static double At(Lane128 pair, int place)
    {
        Span<double> both = stackalloc double[2];
        pair.To(both);
        return both[place];
    }

    private Lane128 PairOf(int line) => Lane128.Of(lines[line].Constant.Front, lines[line].Constant.Rear);

    private bool IsEven(int line) => heard is not null || even[line];

    private bool Is(int line, double value) => heard is null && lines[line].Does == Operation.Constant && lines[line].Constant == (value, value);

    // What is made of constants alone is one.
    private int Worked(Operation does, int a, int b = 0, int c = 0, int d = 0)
    {
        if (heard is not null)
        {
            return Zero;
        }

        var line = new RecordedLine(does, a, b, c, d);
        for (var k = 0; k < line.Reads; k++)
        {
            if (lines[line.Read(k)].Does != Operation.Constant)
            {
                return Add(line);
            }
        }

        Span<Lane128> pairs = [PairOf(a), PairOf(b), PairOf(c), PairOf(d)];
        var made = Of(new RecordedLine(does, 0, 1, 2, 3), pairs);
        return Constant(At(made, 0), At(made, 1));
    }

    private int Add(RecordedLine line)
    {
        if (!known.TryGetValue(line, out var at))
        {
            known[line] = at = lines.Count;
            lines.Add(line);
            even.Add(IsEven(line));
        }

        return at;
    }

    private bool IsEven(in RecordedLine line)
    {
        var alike = line.Does switch
        {
            Operation.Constant => line.Front == line.Rear,
            Operation.Given or Operation.First or Operation.Second => true,
            Operation.State or Operation.Road or Operation.Joined => false,
            _ => true,
        };
        for (var k = 0; alike && line.Does is not (Operation.First or Operation.Second) && k < line.Reads; k++)
        {
            alike = even[line.Read(k)];
        }

        return alike;
    }

    private sealed class Ending(Record? before) : IDisposable
    {
        public void Dispose() => writing = before;
    }
}
