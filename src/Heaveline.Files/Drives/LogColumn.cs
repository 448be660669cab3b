namespace Heaveline.Files.Drives;

/// <summary>One column of a log: numbers, or instants since a first one.</summary>
internal sealed class LogColumn(int index, string name, ColumnMeaning meaning)
{
    private double[] values = new double[1024];
    private int count;
    private bool hasBase;
    private int badBefore;

    /// <summary>Its place in a row.</summary>
    public int Index { get; } = index;

    /// <summary>Its name in the header, or its number.</summary>
    public string Name { get; } = name;

    /// <summary>What it means.</summary>
    public ColumnMeaning Meaning { get; } = meaning;

    /// <summary>Whether its instants are text.</summary>
    public bool IsText { get; set; }

    /// <summary>Cells that are filled and no number.</summary>
    public int Bad { get; private set; }

    /// <summary>What its instants count from, in whole units of the column.</summary>
    public long Base { get; private set; }

    /// <summary>The numbers; not a number where a cell is blank.</summary>
    public ReadOnlySpan<double> Values => values.AsSpan(0, count);

    /// <summary>Whether no cell of it holds a number.</summary>
    public bool IsBlank => !Values.ContainsAnyInRange(double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Makes room.</summary>
    public void Reserve(int rows) => Array.Resize(ref values, Math.Max(rows, 1024));

    /// <summary>Adds the cell of a row.</summary>
    public void Add(ReadOnlySpan<byte> cell, byte point)
    {
        if (count == values.Length)
        {
            Array.Resize(ref values, 2 * count);
        }

        badBefore = Bad;
        cell = Cells.Bare(cell);
        values[count++] = cell.IsEmpty ? double.NaN : Meaning.Kind == ColumnKind.Time ? Instant(cell, point) : Number(cell, point);
    }

    /// <summary>Takes the last row back.</summary>
    public void RemoveLast() => (count, Bad) = (count - 1, badBefore);

    /// <summary>The median of the steps that rise; null where none does.</summary>
    public double? Step()
    {
        var steps = new List<double>(count);
        var before = double.NaN;
        foreach (var t in Values)
        {
            if (t > before)
            {
                steps.Add(t - before);
            }

            before = double.IsNaN(t) ? before : t;
        }

        steps.Sort();
        return steps.Count == 0 ? null : steps[steps.Count / 2];
    }

    private double Number(ReadOnlySpan<byte> cell, byte point)
    {
        if (Cells.TryNumber(cell, point, out var number))
        {
            return number;
        }

        Bad += IsNothing(cell) ? 0 : 1;
        return double.NaN;
    }

    // Whole units are subtracted before the rest is added: nanoseconds since 1970 do not fit a double.
    private double Instant(ReadOnlySpan<byte> cell, byte point)
    {
        long whole;
        double rest;
        if (IsText)
        {
            if (!TimeText.TryRead(cell, out whole, out rest))
            {
                Bad += IsNothing(cell) ? 0 : 1;
                return double.NaN;
            }
        }
        else if (!TryWhole(cell, point, out whole, out rest))
        {
            var number = Number(cell, point);
            // The difference of two such fits 64 bits; nanoseconds reach them in the year 2096.
            if (double.IsNaN(number) || Math.Abs(number) > 4e18)
            {
                Bad += double.IsNaN(number) ? 0 : 1;
                return double.NaN;
            }

            whole = (long)Math.Floor(number);
            rest = number - whole;
        }

        if (!hasBase)
        {
            (Base, hasBase) = (whole, true);
        }

        return ((double)(whole - Base)) + rest;
    }

    private static bool TryWhole(ReadOnlySpan<byte> cell, byte point, out long whole, out double rest)
    {
        (whole, rest) = (0, 0.0);
        var cut = cell.IndexOf(point);
        var digits = cut < 0 ? cell : cell[..cut];
        if (digits.Length is 0 or > 18 || digits.ContainsAnyExceptInRange((byte)'0', (byte)'9'))
        {
            return false;
        }

        foreach (var digit in digits)
        {
            whole = (whole * 10) + (digit - '0');
        }

        return cut < 0 || cut + 1 == cell.Length || Cells.TryNumber(cell[cut..], point, out rest);
    }

    private static bool IsNothing(ReadOnlySpan<byte> cell) =>
        cell.SequenceEqual("NaN"u8) || cell.SequenceEqual("nan"u8) || cell.SequenceEqual("null"u8) || cell.SequenceEqual("NULL"u8)
        || cell.SequenceEqual("NA"u8) || cell.SequenceEqual("n/a"u8) || cell.SequenceEqual("-"u8) || cell.SequenceEqual("--"u8);
}
