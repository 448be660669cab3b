using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using Heaveline.Drives;

namespace Heaveline.Files.Drives;

/// <summary>Brings the sensors of several texts onto one clock, that of the accelerometer.</summary>
/// <param name="tables">The texts.</param>
/// <param name="overrulings">Decisions that the user takes otherwise.</param>
/// <param name="stop">Stops it.</param>
internal sealed class LogJoining(IReadOnlyList<LogTable> tables, IReadOnlyList<Overruling> overrulings, CancellationToken stop)
{
    private const double Overlap = 0.5;
    private readonly List<LogRefusal> refusals = [];
    private readonly List<StoryLine> story = [];

    /// <summary>Why there is no log.</summary>
    public IReadOnlyList<LogRefusal> Refusals => refusals;

    /// <summary>The log; null where no text holds an accelerometer with its clock.</summary>
    public Log? Joined()
    {
        var sensors = tables.SelectMany(t => SensorColumns.Of(t, overrulings)).ToList();
        bool IsForce(SensorColumns s) => s.Kind == SensorKind.Acceleration;
        // With gravity in it rather than beside it; of several the longest.
        var forces = sensors.Where(s => IsForce(s) || s.Kind == SensorKind.AccelerationWithoutGravity)
            .OrderBy(s => IsForce(s) ? 0 : 1).ThenByDescending(s => s.Columns[0].Values.Length).ToList();
        if (forces.Count == 0)
        {
            RefuseWithoutForce();
            return null;
        }

        var force = forces[0];
        stop.ThrowIfCancellationRequested();
        var clocks = Timelines(force.Table, isFast: true);
        if (clocks.Count == 0)
        {
            refusals.Add(new LogRefusal(
                force.Table.File,
                force.Table.Columns.FirstOrDefault(c => c.Meaning.Kind == ColumnKind.Time && c.IsBlank) is { } blank
                    ? $"its column of instants '{blank.Name}' holds none."
                    : "it has no column of instants that rise in s, ms, µs, ns, days or as dates.",
                "Log the time of each sample."));
            return null;
        }

        story.AddRange(tables.SelectMany(t => t.Story));
        var clock = clocks[0];
        story.Add(new StoryLine("time", Said(force.Table, clock), clock.IsAgainstHeader));
        story.AddRange(FarCell.Said(force.Table.File, clock) is { } far ? [far] : []);
        var tracks = new List<SensorTrack> { Track(force, clock, 0.0) };
        foreach (var kind in new[]
            {
                SensorKind.AccelerationWithoutGravity, SensorKind.Gravity, SensorKind.TurnRate, SensorKind.Speed, SensorKind.Position,
            }
            .Where(k => k != force.Kind))
        {
            stop.ThrowIfCancellationRequested();
            if (kind is SensorKind.AccelerationWithoutGravity or SensorKind.Gravity && force.Kind == SensorKind.Acceleration)
            {
                continue;
            }

            Add(tracks, sensors.Where(s => s.Kind == kind), force.Table, clocks);
        }

        // Nobody who wants no position is told why there is none.
        story.AddRange(overrulings.Word("position") == "none" ? [] : tables.Select(PositionColumns.WhyNot).OfType<StoryLine>());
        foreach (var other in sensors.Where(s => IsForce(s) && s != force))
        {
            story.Add(new StoryLine(
                "left-out", $"{other.Table.File}: a second accelerometer is left out; {force.Table.File} is longer or comes first.", true));
        }

        // Numbers without names may be the rest of another file: they are not passed over in silence.
        story.AddRange(tables.Where(t => t.Layout.Names is null && !sensors.Exists(s => s.Table == t)).Select(t => new StoryLine(
            "left-out", $"{t.File} is left out: no header says what its columns are, and their numbers do not tell it.", true)));

        if (tracks[0].Times.Length < 3)
        {
            refusals.Add(new LogRefusal(force.Table.File, "it has fewer than three rows with time and acceleration.", "Give a longer log."));
            return null;
        }

        if (refusals.Count > 0)
        {
            return null;
        }

        return new Log { Tracks = [.. tracks], Story = [.. story] };
    }

    private void RefuseWithoutForce()
    {
        foreach (var table in tables)
        {
            var named = table.Columns.Where(c => c.Meaning.Kind is ColumnKind.Acceleration).Select(c => $"'{c.Name}'").ToList();
            var blank = table.Columns.Where(c => c.Meaning.Kind is ColumnKind.Acceleration && c.IsBlank).Select(c => $"'{c.Name}'").ToList();
            refusals.Add(blank.Count > 0
                ? new LogRefusal(
                    table.File,
                    $"there is no number in {string.Join(", ", blank)} of its acceleration.",
                    "Log all three axes.")
                : named.Count > 0
                ? new LogRefusal(
                    table.File,
                    $"its acceleration, {string.Join(", ", named)}, is as long as gravity in none of g, m/s² and mg, or has not three axes.",
                    "Look at unit and columns.")
                : new LogRefusal(
                    table.File, "it has no three columns of acceleration.", "Give the file of the accelerometer, its columns named by x, y and z."));
        }
    }

    private List<Timeline> Timelines(LogTable table, bool isFast)
    {
        var named = table.Columns.Where(c => c.Meaning.Kind == ColumnKind.Time).ToList();
        if (table.Layout.Names is null && named.Count == 0)
        {
            named.AddRange(table.Columns.Where(SensorColumns.IsRising).Take(1));
        }

        // A sensor's own stamps are more even than those of writing to disk.
        return [.. named.Select(c => Timeline.Of(c, isFast, overrulings.Word("time"))).OfType<Timeline>().Where(t => double.IsFinite(t.Roughness))
            .OrderBy(t => t.Roughness)];
    }

    private static string Said(LogTable table, Timeline clock) =>
        $"{table.File}: time from '{clock.Column.Name}' in {(clock.Column.IsText ? "text" : clock.Unit)}"
        + (clock.IsAgainstHeader ? $", though the header says {clock.Column.Meaning.Unit}: the steps between rows tell." : ".");

    private void Add(List<SensorTrack> tracks, IEnumerable<SensorColumns> sensors, LogTable table, List<Timeline> clocks)
    {
        foreach (var sensor in sensors.OrderBy(s => s.Table == table ? 0 : 1).ThenByDescending(s => s.Columns[0].Values.Length))
        {
            if (sensor.Table == table)
            {
                tracks.Add(Track(sensor, clocks[0], 0.0));
                return;
            }

            foreach (var own in Timelines(sensor.Table, sensor.Kind is not (SensorKind.Speed or SensorKind.Position)))
            {
                foreach (var clock in clocks)
                {
                    if (Offset(clock, own) is { } offset)
                    {
                        // Both columns of the accelerometer's text count rows of the same instants.
                        var between = clocks[0].First - clock.First;
                        story.Add(new StoryLine("time", Said(sensor.Table, own) + Shift(clock, own, offset), own.IsAgainstHeader));
                        story.AddRange(FarCell.Said(sensor.Table.File, own) is { } far ? [far] : []);
                        tracks.Add(Track(sensor, own, offset + between));
                        return;
                    }
                }
            }

            story.Add(new StoryLine(
                "left-out",
                $"{sensor.Table.File} is left out: its time and that of {table.File} do not overlap, and nothing else joins them.",
                true));
        }
    }

    private static string Shift(Timeline clock, Timeline own, double offset)
    {
        var plain = (double)(own.Origin - clock.Origin);
        return Math.Abs(offset - plain) < 1.0
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture, $" Its clock is of another zone; {(offset - plain) / 900.0:F0} quarters of an hour were added.");
    }

    // What is added to instants of the one clock to get those of the other; clocks of two zones differ by quarters of an hour.
    private static double? Offset(Timeline clock, Timeline own)
    {
        const decimal quarter = 900m;
        const decimal absolute = 1e8m;
        var plain = own.Origin - clock.Origin;
        if (Share(clock, own, (double)plain) >= Overlap)
        {
            return (double)plain;
        }

        var both = own.Origin > absolute && clock.Origin > absolute;
        var wanted = clock.First - own.First - (double)plain;
        if (!both || Math.Abs(wanted) > 15 * 3600.0)
        {
            return null;
        }

        var zone = (double)plain + (Math.Round(wanted / (double)quarter) * (double)quarter);
        return Share(clock, own, zone) >= Overlap ? zone : null;
    }

    private static double Share(Timeline clock, Timeline own, double offset)
    {
        var (from, to) = (Math.Max(clock.First, own.First + offset), Math.Min(clock.Last, own.Last + offset));
        var shorter = Math.Min(clock.Last - clock.First, own.Last - own.First);
        return shorter > 0.0 ? (to - from) / shorter : 0.0;
    }

    private SensorTrack Track(SensorColumns sensor, Timeline clock, double offset)
    {
        story.Add(sensor.Told);
        var rows = new List<int>(clock.Times.Length);
        for (var i = 0; i < clock.Times.Length; i++)
        {
            var isWhole = !double.IsNaN(clock.Times[i]);
            // What a position says of its doubt may be blank.
            foreach (var column in sensor.Kind == SensorKind.Position ? sensor.Columns.Take(2) : sensor.Columns)
            {
                isWhole &= !double.IsNaN(column.Values[i]);
            }

            isWhole &= sensor.Kind != SensorKind.Position || PositionColumns.IsFix(sensor, i);

            if (isWhole)
            {
                rows.Add(i);
            }
        }

        rows = FarCell.Without(sensor, rows, story, refusals);
        if (sensor.Kind is SensorKind.Speed or SensorKind.Position)
        {
            rows = Fixes(rows, clock.Times, sensor);
        }

        return new SensorTrack
        {
            Kind = sensor.Kind,
            File = sensor.Table.File,
            Columns = [.. sensor.Columns.Select(c => c.Name)],
            UnitSaid = sensor.UnitSaid,
            UnitTaken = sensor.UnitTaken,
            Times = Kept(rows, i => clock.Times[i] + offset),
            Values = [.. sensor.Columns.Select(c => Kept(rows, i => c.Values[i] * sensor.FactorOf(c)))],
        };
    }

    private static ImmutableArray<double> Kept(List<int> rows, Func<int, double> of)
    {
        var values = new double[rows.Count];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = of(rows[i]);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(values);
    }

    // A fix that is repeated in every row until the next: the rows in which it changes, and one a second while it stands.
    private List<int> Fixes(List<int> rows, double[] times, SensorColumns sensor)
    {
        var columns = sensor.Kind == SensorKind.Position ? sensor.Columns.Take(2).ToArray() : [sensor.Columns[0]];
        bool IsOther(int row, int before) => columns.Any(c => c.Values[row] != c.Values[before]);
        var changes = 0;
        for (var k = 1; k < rows.Count; k++)
        {
            changes += IsOther(rows[k], rows[k - 1]) ? 1 : 0;
        }

        if (rows.Count < 20 || changes > 0.3 * rows.Count)
        {
            return rows;
        }

        var kept = new List<int> { rows[0] };
        foreach (var row in rows.Skip(1))
        {
            if (IsOther(row, kept[^1]) || times[row] - times[kept[^1]] >= 1.5)
            {
                kept.Add(row);
            }
        }

        var (about, what) = sensor.Kind == SensorKind.Position ? ("position-fixes", "Position") : ("speed-fixes", "Speed");
        story.Add(new StoryLine(about, string.Create(
            CultureInfo.InvariantCulture, $"{what} stands in every row and changes in {changes} of {rows.Count}: those are its fixes.")));
        return kept;
    }
}
