namespace Heaveline.Drives;

/// <summary>A sensor on instants that stand evenly: straight lines between its samples; beyond its ends the last value stands.</summary>
/// <param name="track">The sensor.</param>
/// <param name="start">The first instant, s.</param>
/// <param name="step">From one to the next, s.</param>
/// <param name="count">How many.</param>
internal sealed class EvenLines(TimedTrack track, double start, double step, int count)
{
    /// <summary>How many instants.</summary>
    public int Count => count;

    /// <summary>Room for so many instants.</summary>
    /// <param name="instants">How many.</param>
    public EvenRoom Room(int instants) =>
        new([.. track.Values.Select(_ => new double[instants])], new double[instants], new List<(int Sample, int End)>(instants));

    /// <summary>All columns at some of the instants.</summary>
    /// <param name="from">The first of the instants.</param>
    /// <param name="end">The one after the last.</param>
    /// <param name="room">Receives the values, from its beginning on.</param>
    public void Read(int from, int end, EvenRoom room)
    {
        Shares(from, end, room);
        for (var column = 0; column < room.Columns.Length; column++)
        {
            var values = track.Values[column];
            var result = room.Columns[column].AsSpan(0, end - from);
            var i = 0;
            foreach (var (k, until) in room.Lines)
            {
                var (value, rise) = (values[k], values[k + 1] - values[k]);
                for (; i < until; i++)
                {
                    result[i] = value + (room.Shares[i] * rise);
                }
            }
        }
    }

    // On which line each instant lies, and where on it: for all columns alike.
    private void Shares(int from, int end, EvenRoom room)
    {
        var (times, shares) = (track.Times, room.Shares);
        var found = Array.BinarySearch(times, start + (from * step));
        var k = Math.Min(Math.Max(found < 0 ? ~found - 1 : found, 0), times.Length - 2);
        room.Lines.Clear();
        var i = from;
        for (var time = start + (i * step); i < end;)
        {
            while (k + 2 < times.Length && times[k + 1] <= time)
            {
                k++;
            }

            var (before, per) = (times[k], 1.0 / (times[k + 1] - times[k]));
            var until = k + 2 < times.Length ? times[k + 1] : double.PositiveInfinity;
            do
            {
                var share = (time - before) * per;
                shares[i - from] = share < 0.0 ? 0.0 : share > 1.0 ? 1.0 : share;
                i++;
                time = start + (i * step);
            }
            while (i < end && time < until);
            room.Lines.Add((k, i - from));
        }
    }
}
