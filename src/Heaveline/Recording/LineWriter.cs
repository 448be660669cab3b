namespace Heaveline.Recording;

/// <summary>Lines of a record as instructions of one WebAssembly function: every pair in one 128-bit register.</summary>
/// <param name="record">The record.</param>
/// <param name="arguments">Integers that the function takes.</param>
internal sealed class LineWriter(Record record, int arguments)
{
    private const int Splat = 0x14;
    private const int Shuffle = 0x0d;
    private const byte LocalGet = 0x20;
    private const byte LocalSet = 0x21;
    private const byte LocalTee = 0x22;

    private readonly List<byte> locals = [];
    private readonly Dictionary<int, int> places = [];
    private readonly Dictionary<int, int> addresses = [];

    /// <summary>The instructions so far.</summary>
    public ModuleBytes Code { get; } = new();

    /// <summary>Whether powers are asked for, which the module gets from outside.</summary>
    public bool HasPower { get; private set; }

    /// <summary>Where the road of this step stands: the local that holds its address.</summary>
    public int RoadAddress { get; set; }

    public int Local(byte type)
    {
        locals.Add(type);
        return arguments + locals.Count - 1;
    }

    public ModuleBytes Get(int local) => Code.Add(LocalGet).Unsigned(local);

    public ModuleBytes Set(int local) => Code.Add(LocalSet).Unsigned(local);

    public ModuleBytes Tee(int local) => Code.Add(LocalTee).Unsigned(local);

    /// <summary>A line stands in memory, as a pair, at an address.</summary>
    public void Lie(int line, int address) => addresses[line] = address;

    /// <summary>A line stands in a local from here on.</summary>
    public void Stand(int line, int local) => places[line] = local;

    /// <summary>Fetches a line from memory into a local of its own.</summary>
    public void Fetch(int line)
    {
        Put(line);
        var local = Local(ModuleBytes.Pair);
        Set(local);
        places[line] = local;
    }

    /// <summary>Works a line out into a local of its own.</summary>
    public void Keep(int line)
    {
        Work(line);
        var local = Local(ModuleBytes.Pair);
        Set(local);
        places[line] = local;
    }

    /// <summary>Puts a line on the stack.</summary>
    public void Put(int line)
    {
        if (places.TryGetValue(line, out var local))
        {
            Get(local);
        }
        else if (addresses.TryGetValue(line, out var address))
        {
            Code.Add(0x41, 0x00).Wide(0x00).Add(0x03).Unsigned(address);
        }
        else
        {
            Work(line);
        }
    }

    /// <summary>The function's body with its locals.</summary>
    public ModuleBytes Body()
    {
        var groups = new List<(int Count, byte Type)>();
        foreach (var type in locals)
        {
            if (groups.Count > 0 && groups[^1].Type == type)
            {
                groups[^1] = (groups[^1].Count + 1, type);
            }
            else
            {
                groups.Add((1, type));
            }
        }

        var body = new ModuleBytes().Unsigned(groups.Count);
        foreach (var (count, type) in groups)
        {
            body.Unsigned(count).Add(type);
        }

        body.Add(Code);
        return new ModuleBytes().Unsigned(body.Count).Add(body);
    }

    private void Work(int at)
    {
        var line = record.Lines[at];
        switch (line.Does)
        {
            case Operation.Constant when line.Front == line.Rear:
                Code.Add(0x44).Double(line.Constant.Front).Wide(Splat);
                return;
            case Operation.Constant:
                Code.Wide(0x0c).Double(line.Constant.Front).Double(line.Constant.Rear);
                return;
            case Operation.Given:
                // One number from the beginning of memory, twice.
                Code.Add(0x41, 0x00).Wide(0x0a).Add(0x03).Unsigned(sizeof(double) * line.A);
                return;
            case Operation.Road:
                Get(RoadAddress).Wide(0x00).Add(0x03).Unsigned(2 * sizeof(double) * line.A);
                return;
            case Operation.Exchanged:
                Shuffled(line.A, line.A, 8, 16);
                return;
            case Operation.First:
                Put(line.A);
                Code.Wide(0x21).Add(0).Wide(Splat);
                return;
            case Operation.Second:
                Put(line.A);
                Code.Wide(0x21).Add(1).Wide(Splat);
                return;
            case Operation.Joined:
                Shuffled(line.A, line.B, 0, 16);
                return;
            case Operation.Fused:
                // Two roundings: what a browser gives is the same on every processor.
                Put(line.A);
                Put(line.B);
                Code.Wide(0xf2);
                Put(line.C);
                Code.Wide(0xf0);
                return;
            case Operation.Choice:
                Put(line.C);
                Put(line.D);
                Put(line.A);
                Put(line.B);
                Code.Wide(0x4b).Wide(0x52);
                return;
            case Operation.Power:
                Power(line.A, line.B);
                return;
            case Operation.PowerAbove:
                // Where neither place is above the floor both powers are known.
                Put(line.A);
                if (!places.ContainsKey(line.A))
                {
                    var held = Local(ModuleBytes.Pair);
                    Tee(held);
                    places[line.A] = held;
                }

                Put(line.C);
                Code.Wide(0x4a).Wide(0x53).Add(0x04, ModuleBytes.Pair);
                Power(line.A, line.B);
                Code.Add(0x05);
                Put(line.D);
                Code.Add(0x0b);
                return;
            default:
                break;
        }

        Put(line.A);
        if (line.Reads == 2)
        {
            Put(line.B);
        }

        Code.Wide(line.Does switch
        {
            Operation.Add => 0xf0,
            Operation.Less => 0xf1,
            Operation.Times => 0xf2,
            Operation.Over => 0xf3,
            Operation.Smaller => 0xf6,
            Operation.Larger => 0xf7,
            Operation.Negative => 0xed,
            Operation.Root => 0xef,
            _ => throw new InvalidOperationException($"{line.Does} has no instruction."),
        });
    }

    // Eight bytes from each of two, by their places in both together.
    private void Shuffled(int a, int b, byte front, byte rear)
    {
        Put(a);
        Put(b);
        Code.Wide(Shuffle);
        for (byte k = 0; k < 8; k++)
        {
            Code.Add((byte)(front + k));
        }

        for (byte k = 0; k < 8; k++)
        {
            Code.Add((byte)(rear + k));
        }
    }

    // Place by place, by the function that comes first among the imports.
    private void Power(int a, int b)
    {
        HasPower = true;
        for (byte place = 0; place < 2; place++)
        {
            Put(a);
            Code.Wide(0x21).Add(place);
            Put(b);
            Code.Wide(0x21).Add(place).Add(0x10, 0x00);
            Code.Wide(place == 0 ? Splat : 0x22);
            if (place == 1)
            {
                Code.Add(1);
            }
        }
    }
}
