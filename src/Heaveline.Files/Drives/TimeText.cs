namespace Heaveline.Files.Drives;

/// <summary>Instants written as text: a date in figures or with the month's first letters, a time of day, a zone or none.</summary>
internal static class TimeText
{
    private const long Day = 86400;
    private static readonly long Epoch = DateTime.UnixEpoch.Ticks / TimeSpan.TicksPerSecond;

    /// <summary>
    /// Whole seconds since 1970 (UTC, or of the unnamed zone; since midnight where there is no date) and the rest; false where it is none.
    /// </summary>
    public static bool TryRead(ReadOnlySpan<byte> cell, out long seconds, out double rest)
    {
        (seconds, rest) = (0, 0.0);
        var at = 0;
        if (cell.Length is < 5 or > 40 || !TryWhole(cell, ref at, 4, out var first))
        {
            return false;
        }

        var date = 0L;
        if (Next(cell, at) is (byte)'-' or (byte)'/' or (byte)'.')
        {
            if (!TryDate(cell, ref at, first, out date) || Next(cell, at) is not ((byte)' ' or (byte)'T' or (byte)'t' or (byte)'_' or (byte)','))
            {
                return false;
            }

            at++;
            while (Next(cell, at) == (byte)' ')
            {
                at++;
            }

            if (!TryWhole(cell, ref at, 2, out first))
            {
                return false;
            }
        }

        if (!TryClock(cell, ref at, first, out var clock, out rest) || !TryZone(cell[at..].Trim((byte)' '), ref clock))
        {
            return false;
        }

        seconds = date + clock;
        return true;
    }

    private static byte Next(ReadOnlySpan<byte> cell, int at) => at < cell.Length ? cell[at] : (byte)0;

    private static bool TryWhole(ReadOnlySpan<byte> cell, ref int at, int most, out int number)
    {
        var start = at;
        for (number = 0; at < cell.Length && at - start < most && (uint)(cell[at] - '0') <= 9; at++)
        {
            number = (number * 10) + (cell[at] - '0');
        }

        return at > start;
    }

    private static bool TryDate(ReadOnlySpan<byte> cell, ref int at, int first, out long seconds)
    {
        seconds = 0;
        var isYearFirst = at == 4;
        at++;
        int second;
        if (MonthOf(cell[at..]) is { } named)
        {
            second = named;
            at += 3;
        }
        else if (!TryWhole(cell, ref at, 2, out second))
        {
            return false;
        }

        if (Next(cell, at) is not ((byte)'-' or (byte)'/' or (byte)'.'))
        {
            return false;
        }

        at++;
        if (!TryWhole(cell, ref at, 4, out var third))
        {
            return false;
        }

        // Day before month, unless the figures say that it cannot be.
        var (year, month, day) = isYearFirst ? (first, second, third) : second > 12 ? (third, first, second) : (third, second, first);
        if (year is < 1970 or > 9000 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month))
        {
            return false;
        }

        seconds = (new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Utc).Ticks / TimeSpan.TicksPerSecond) - Epoch;
        return true;
    }

    private static int? MonthOf(ReadOnlySpan<byte> cell)
    {
        var months = "janfebmaraprmayjunjulaugsepoctnovdec"u8;
        if (cell.Length < 3)
        {
            return null;
        }

        for (var k = 0; k < 12; k++)
        {
            if ((cell[0] | 32) == months[3 * k] && (cell[1] | 32) == months[(3 * k) + 1] && (cell[2] | 32) == months[(3 * k) + 2])
            {
                return k + 1;
            }
        }

        return null;
    }

    private static bool TryClock(ReadOnlySpan<byte> cell, ref int at, int hours, out long seconds, out double rest)
    {
        (seconds, rest) = (0, 0.0);
        if (Next(cell, at) is not ((byte)':' or (byte)'-'))
        {
            return false;
        }

        at++;
        if (!TryWhole(cell, ref at, 2, out var minutes) || Next(cell, at) is not ((byte)':' or (byte)'-'))
        {
            return false;
        }

        at++;
        if (!TryWhole(cell, ref at, 2, out var whole) || hours > 24 || minutes > 59 || whole > 60)
        {
            return false;
        }

        if (Next(cell, at) is (byte)'.' or (byte)',' or (byte)':' or (byte)'_')
        {
            at++;
            for (var place = 0.1; (uint)(Next(cell, at) - '0') <= 9; at++, place *= 0.1)
            {
                rest += (cell[at] - '0') * place;
            }
        }

        seconds = (hours * 3600L) + (minutes * 60L) + whole;
        return true;
    }

    private static bool TryZone(ReadOnlySpan<byte> zone, ref long seconds)
    {
        if (zone.IsEmpty || zone is [(byte)'Z' or (byte)'z'] || zone.SequenceEqual("UTC"u8))
        {
            return true;
        }

        if (zone is [(var half and ((byte)'A' or (byte)'a' or (byte)'P' or (byte)'p')), (byte)'M' or (byte)'m'])
        {
            seconds = (seconds % (Day / 2)) + ((half | 32) == 'p' ? Day / 2 : 0);
            return true;
        }

        var at = 1;
        if (zone[0] is not ((byte)'+' or (byte)'-') || !TryWhole(zone, ref at, 2, out var hours))
        {
            return false;
        }

        at += Next(zone, at) == (byte)':' ? 1 : 0;
        var minutes = 0;
        if (at < zone.Length && (!TryWhole(zone, ref at, 2, out minutes) || at < zone.Length))
        {
            return false;
        }

        seconds -= (zone[0] == (byte)'-' ? -1 : 1) * ((hours * 3600L) + (minutes * 60L));
        return true;
    }
}
