namespace Heaveline.Recording;

/// <summary>Records as WebAssembly modules. They share the memory that whoever runs them gives, and get powers from outside.</summary>
/// <remarks>
/// What is given stands at the beginning of memory, a double each, as <see cref="LiveGiven"/> says. Nothing else is known of a car here: a module is
/// arithmetic alone, and can do nothing but read and write that memory.
/// </remarks>
internal static class RecordModule
{
    private const int RoadBytes = 16 * StepRecord.RoadPairs;
    private const byte End = 0x0b;

    /// <summary>
    /// A step as <c>run(samples, stepsPerSample, first, moving, road, to)</c>: runs from rest and writes each sample's numbers from an address on.
    /// The road's table holds a row of eight doubles a step from step <c>first</c> on, heights of front and rear left, of both right, then rates;
    /// the row ahead of it stands for every step before, the row behind its <c>moving</c> rows for every step after.
    /// </summary>
    /// <param name="step">The step.</param>
    /// <param name="given">How many numbers are given; behind them stands what <see cref="Ahead"/> has left.</param>
    public static byte[] Of(StepRecord step, int given)
    {
        const int Samples = 0, PerSample = 1, First = 2, Moving = 3, Road = 4, To = 5;
        var plan = new RecordPlan(step);
        var writer = new LineWriter(step.Record, 6);
        var code = writer.Code;
        int at = writer.Local(ModuleBytes.Integer), sample = writer.Local(ModuleBytes.Integer), within = writer.Local(ModuleBytes.Integer);
        writer.RoadAddress = writer.Local(ModuleBytes.Integer);
        int[] states = [.. plan.States.Select(_ => writer.Local(ModuleBytes.Pair))];
        for (var i = 0; i < states.Length; i++)
        {
            writer.Stand(plan.States[i].Now, states[i]);
        }

        for (var k = 0; k < plan.Kept.Count; k++)
        {
            writer.Lie(plan.Kept[k], Behind(given, k));
        }

        foreach (var line in plan.Kept.Where(line => plan.Uses[line] > 1))
        {
            writer.Fetch(line);
        }

        // at = −first; for every sample, for every step of it:
        code.Add(0x41).Signed(0);
        writer.Get(First).Add(0x6b);
        writer.Set(at);
        code.Add(0x03, 0x40).Add(0x41).Signed(0);
        writer.Set(within);
        code.Add(0x03, 0x40);
        // road + 64·max(−1, min(at, moving)).
        writer.Get(at);
        writer.Get(Moving);
        writer.Get(at);
        writer.Get(Moving).Add(0x48, 0x1b);
        writer.Tee(writer.RoadAddress).Add(0x41).Signed(-1);
        writer.Get(writer.RoadAddress).Add(0x41).Signed(-1).Add(0x4a, 0x1b);
        code.Add(0x41).Signed(RoadBytes).Add(0x6c);
        writer.Get(Road).Add(0x6a);
        writer.Set(writer.RoadAddress);
        foreach (var line in plan.EachStep.Where(line => plan.Uses[line] > 1))
        {
            writer.Keep(line);
        }

        writer.Get(within).Add(0x45, 0x04, 0x40);
        foreach (var line in plan.EachSample.Where(line => plan.Uses[line] > 1 && !IsPart(step, line)))
        {
            writer.Keep(line);
        }

        Store(writer, step.Record, step.Sample, To);
        writer.Get(To).Add(0x41).Signed(sizeof(double) * step.Sample.Count).Add(0x6a);
        writer.Set(To).Add(End);
        foreach (var (_, next) in plan.States)
        {
            writer.Put(next);
        }

        foreach (var state in states.Reverse())
        {
            writer.Set(state);
        }

        writer.Get(at).Add(0x41, 0x01, 0x6a);
        writer.Set(at);
        Loop(within, PerSample);
        Loop(sample, Samples);
        code.Add(End);
        return Module(writer, 6);

        void Loop(int counter, int to)
        {
            writer.Get(counter).Add(0x41, 0x01, 0x6a);
            writer.Tee(counter);
            writer.Get(to).Add(0x48, 0x0d, 0x00, End);
        }
    }

    /// <summary>
    /// A fold as <c>run(count, one, other, stride, apart, state)</c>: takes up so many samples, the newest ones of two columns standing at addresses
    /// from which each sample lies a stride on, those that they are compared with so many bytes before. The state, two doubles a line, stands at an
    /// address and is left there.
    /// </summary>
    public static byte[] Of(FoldRecord fold)
    {
        const int Count = 0, One = 1, Other = 2, Stride = 3, Apart = 4, State = 5;
        var plan = fold.Plan;
        var writer = new LineWriter(fold.Record, 6);
        var code = writer.Code;
        int PlaceOf(int now) => 16 * fold.States.ToList().FindIndex(state => state.Now == now);
        int[] states = [.. plan.States.Select(_ => writer.Local(ModuleBytes.Pair))];
        for (var i = 0; i < states.Length; i++)
        {
            writer.Get(State).Wide(0x00).Add(0x03).Unsigned(PlaceOf(plan.States[i].Now));
            writer.Set(states[i]);
            writer.Stand(plan.States[i].Now, states[i]);
        }

        foreach (var line in plan.Ahead)
        {
            writer.Keep(line);
        }

        int[] roads = [.. Enumerable.Range(0, fold.Record.Lines.Count).Where(i => fold.Record.Lines[i].Does == Operation.Road && plan.Uses[i] > 0)];
        int[] pairs = [.. roads.Select(_ => writer.Local(ModuleBytes.Pair))];
        code.Add(0x03, 0x40);
        for (var i = 0; i < roads.Length; i++)
        {
            var isBefore = fold.Record.Lines[roads[i]].A == 1;
            // The other first, with the one before it on the stack: a place of a pair is loaded into a pair that is there.
            Address(Other, isBefore);
            Address(One, isBefore);
            code.Wide(0x5d).Add(0x03).Unsigned(0);
            code.Wide(0x57).Add(0x03).Unsigned(0).Add(1);
            writer.Set(pairs[i]);
            writer.Stand(roads[i], pairs[i]);
        }

        foreach (var line in plan.EachStep.Where(line => plan.Uses[line] > 1))
        {
            writer.Keep(line);
        }

        foreach (var (_, next) in plan.States)
        {
            writer.Put(next);
        }

        foreach (var state in states.Reverse())
        {
            writer.Set(state);
        }

        foreach (var column in new[] { One, Other })
        {
            writer.Get(column);
            writer.Get(Stride).Add(0x6a);
            writer.Set(column);
        }

        writer.Get(Count).Add(0x41).Signed(-1).Add(0x6a);
        writer.Tee(Count).Add(0x41).Signed(0).Add(0x4a, 0x0d, 0x00, End);
        for (var i = 0; i < states.Length; i++)
        {
            writer.Get(State);
            writer.Get(states[i]).Wide(0x0b).Add(0x03).Unsigned(PlaceOf(plan.States[i].Now));
        }

        code.Add(End);
        return Module(writer, 6);

        void Address(int column, bool isBefore)
        {
            writer.Get(column);
            if (isBefore)
            {
                writer.Get(Apart).Add(0x6b);
            }
        }
    }

    /// <summary>
    /// What a step reads and does not change, as <c>run(to)</c>: works it out from what is given and leaves it behind that, wherever it is told to.
    /// </summary>
    /// <param name="step">The step.</param>
    /// <param name="given">How many numbers are given.</param>
    public static byte[] Ahead(StepRecord step, int given)
    {
        var plan = new RecordPlan(step);
        var writer = new LineWriter(step.Record, 1);
        KeepOften(writer, plan, step.Record);

        for (var k = 0; k < plan.Kept.Count; k++)
        {
            writer.Code.Add(0x41, 0x00);
            writer.Put(plan.Kept[k]);
            writer.Code.Wide(0x0b).Add(0x03).Unsigned(Behind(given, k));
        }

        writer.Code.Add(End);
        return Module(writer, 1);
    }

    /// <summary>The first address that is free behind what is given and left.</summary>
    public static int Free(StepRecord step, int given) => Behind(given, new RecordPlan(step).Kept.Count);

    /// <summary>Numbers worked out once, as <c>run(to)</c>: writes them one after the other from an address on.</summary>
    public static byte[] Of(Record record, IReadOnlyList<int> numbers)
    {
        var plan = new RecordPlan(new StepRecord(record, [], numbers));
        var writer = new LineWriter(record, 1);
        KeepOften(writer, plan, record);

        Store(writer, record, numbers, 0);
        writer.Code.Add(End);
        return Module(writer, 1);
    }

    // What is given is as short to read again as to keep, until it is read a third time.
    private static void KeepOften(LineWriter writer, RecordPlan plan, Record record)
    {
        var given = Enumerable.Range(0, record.Lines.Count).Where(i => record.Lines[i].Does == Operation.Given && plan.Uses[i] > 2);
        foreach (var line in given.Concat(plan.Ahead.Where(line => plan.Uses[line] > 1)))
        {
            writer.Keep(line);
        }
    }

    // Address of a pair behind the numbers given.
    private static int Behind(int given, int k) => 16 * (((given + 1) / 2) + k);

    // First and second places are written straight from their pairs.
    private static bool IsPart(StepRecord step, int line) => step.Record.Lines[line].Does is Operation.First or Operation.Second;

    private static void Store(LineWriter writer, Record record, IReadOnlyList<int> numbers, int to)
    {
        for (var k = 0; k < numbers.Count; k++)
        {
            var line = record.Lines[numbers[k]];
            var isPart = line.Does is Operation.First or Operation.Second;
            writer.Get(to);
            writer.Put(isPart ? line.A : numbers[k]);
            writer.Code.Wide(0x5b).Add(0x03).Unsigned(sizeof(double) * k).Add(line.Does == Operation.Second ? (byte)1 : (byte)0);
        }
    }

    private static byte[] Module(LineWriter writer, int arguments)
    {
        var module = new ModuleBytes().Add(0x00, (byte)'a', (byte)'s', (byte)'m', 1, 0, 0, 0);
        var types = new ModuleBytes().Unsigned(2).Add(0x60).Unsigned(arguments);
        for (var i = 0; i < arguments; i++)
        {
            types.Add(ModuleBytes.Integer);
        }

        types.Unsigned(0).Add(0x60).Unsigned(2).Add(ModuleBytes.Number, ModuleBytes.Number).Unsigned(1).Add(ModuleBytes.Number);
        module.Section(1, types);
        var imports = new ModuleBytes().Unsigned(writer.HasPower ? 2 : 1);
        if (writer.HasPower)
        {
            imports.Name("of").Name("pow").Add(0x00).Unsigned(1);
        }

        imports.Name("of").Name("memory").Add(0x02, 0x00).Unsigned(1);
        module.Section(2, imports);
        module.Section(3, new ModuleBytes().Unsigned(1).Unsigned(0));
        module.Section(7, new ModuleBytes().Unsigned(1).Name("run").Add(0x00).Unsigned(writer.HasPower ? 1 : 0));
        return module.Section(10, new ModuleBytes().Unsigned(1).Add(writer.Body())).Written;
    }
}
