using System.Buffers.Text;

namespace Heaveline.Files.Drives;

/// <summary>Cells of a row, and the numbers in them.</summary>
internal static class Cells
{
    // Exact in a double, and so are their products with whole numbers below 2^53: one rounding.
    private static readonly double[] Tens = [.. Enumerable.Range(0, 23)
        .Select(k => double.Parse($"1e{k}", System.Globalization.CultureInfo.InvariantCulture))];

    /// <summary>A line in cells; quotes around a cell are taken off, a separator between them stays in it.</summary>
    public static List<string> Split(string line, char separator)
    {
        var cells = new List<string>();
        for (var at = 0; at <= line.Length;)
        {
            var start = at;
            while (start < line.Length && line[start] == ' ')
            {
                start++;
            }

            if (start < line.Length && line[start] == '"')
            {
                var end = line.IndexOf('"', start + 1);
                end = end < 0 ? line.Length : end;
                cells.Add(line[(start + 1)..end].Trim());
                var next = line.IndexOf(separator, Math.Min(end + 1, line.Length));
                at = next < 0 ? line.Length + 1 : next + 1;
            }
            else
            {
                var next = line.IndexOf(separator, at);
                next = next < 0 ? line.Length : next;
                cells.Add(line[at..next].Trim());
                at = next + 1;
            }
        }

        return cells;
    }

    /// <summary>Blanks and one pair of quotes taken off.</summary>
    public static ReadOnlySpan<byte> Bare(ReadOnlySpan<byte> cell)
    {
        cell = cell.Trim(" \t"u8);
        return cell is [(byte)'"', .., (byte)'"'] ? cell[1..^1].Trim(" \t"u8) : cell;
    }

    /// <summary>A finite number; false where the cell is blank or no number.</summary>
    /// <param name="cell">The bare cell.</param>
    /// <param name="point">What stands before the decimals.</param>
    /// <param name="number">The number.</param>
    public static bool TryNumber(ReadOnlySpan<byte> cell, byte point, out double number)
    {
        var (mantissa, digits, decimals, at) = (0UL, 0, 0, 0);
        var isNegative = false;
        if (cell.Length > 0 && cell[0] is (byte)'-' or (byte)'+')
        {
            isNegative = cell[0] == (byte)'-';
            at = 1;
        }

        for (var hasPoint = false; at < cell.Length; at++)
        {
            var c = cell[at];
            if ((uint)(c - '0') <= 9)
            {
                mantissa = (mantissa * 10) + (ulong)(c - '0');
                digits++;
                decimals += hasPoint ? 1 : 0;
            }
            else if (c == point && !hasPoint)
            {
                hasPoint = true;
            }
            else
            {
                break;
            }
        }

        if (at == cell.Length && digits is > 0 and <= 19 && mantissa < 1UL << 53 && decimals < Tens.Length)
        {
            number = mantissa / Tens[decimals];
            number = isNegative ? -number : number;
            return true;
        }

        return digits > 0 && TrySlowly(cell, point, out number) || (number = 0.0) != 0.0;
    }

    private static bool TrySlowly(ReadOnlySpan<byte> cell, byte point, out double number)
    {
        const int longest = 64;
        if (cell.Length > longest)
        {
            number = 0.0;
            return false;
        }

        Span<byte> plain = stackalloc byte[cell.Length];
        cell.CopyTo(plain);
        if (point != (byte)'.')
        {
            plain.Replace((byte)'.', (byte)'?');
            plain.Replace(point, (byte)'.');
        }

        plain = plain is [(byte)'+', ..] ? plain[1..] : plain;
        return Utf8Parser.TryParse(plain, out number, out int used) && used == plain.Length && double.IsFinite(number);
    }
}
