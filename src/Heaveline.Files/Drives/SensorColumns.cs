using System.Globalization;
using Heaveline.Drives;
using Heaveline.Quantities;

namespace Heaveline.Files.Drives;

/// <summary>The columns of one sensor, with the unit that header and numbers agree on.</summary>
/// <param name="Table">The text that they stand in.</param>
/// <param name="Kind">What they measure.</param>
/// <param name="Columns">Three columns x, y, z; one; or those of a position.</param>
/// <param name="UnitTaken">The unit that they are taken in; of a position that of latitude and longitude.</param>
/// <param name="Factor">From that unit to SI.</param>
/// <param name="Told">The decision.</param>
internal sealed record SensorColumns(
    LogTable Table, SensorKind Kind, IReadOnlyList<LogColumn> Columns, string UnitTaken, double Factor, StoryLine Told)
{
    private const string Wished = "as you say";

    private static readonly double Gravity = 1.0 / In.StandardGravities.Factor;

    // (Unit, its factor, the lengths between which gravity lies in it.)
    private static readonly (string Unit, double Factor, double Least, double Most)[] Forces =
        [("g", Gravity, 0.8, 1.2), ("m/s²", 1.0, 8.0, 12.0), ("mg", 0.001 * Gravity, 800.0, 1200.0)];

    /// <summary>The unit that the header says; blank for none.</summary>
    public string UnitSaid => Columns[0].Meaning.Unit;

    /// <summary>From the unit of one of its columns to SI: what a position says of its doubt stands in metres.</summary>
    /// <param name="column">The column.</param>
    public double FactorOf(LogColumn column) => Kind == SensorKind.Position && column.Meaning.Kind == ColumnKind.PositionAccuracy ? 1.0 : Factor;

    /// <summary>All sensors of a text.</summary>
    /// <param name="table">The text.</param>
    /// <param name="overrulings">Decisions that the user takes otherwise.</param>
    public static IReadOnlyList<SensorColumns> Of(LogTable table, IReadOnlyList<Overruling> overrulings)
    {
        var sensors = Found(table, overrulings);
        string Name(SensorColumns s) => s.Kind switch
        {
            SensorKind.Speed => "speed",
            SensorKind.TurnRate => "turn-rate",
            SensorKind.Position => "position",
            _ => "",
        };
        sensors.RemoveAll(s => overrulings.Word(Name(s)) == "none");
        return sensors;
    }

    private static List<SensorColumns> Found(LogTable table, IReadOnlyList<Overruling> overrulings)
    {
        var sensors = new List<SensorColumns>();
        if (table.Layout.Names is null)
        {
            sensors.AddRange(Unnamed(table).Where(s => !table.Overruled.Has(s.Kind switch
            {
                SensorKind.TurnRate => ColumnKind.TurnRate,
                SensorKind.Speed => ColumnKind.Speed,
                _ => ColumnKind.Acceleration,
            })));
        }

        var unit = overrulings.Word("acceleration");
        var forces = Triples(table, ColumnKind.Acceleration).Select(t => Force(table, t, SensorKind.Acceleration, unit)).ToList();
        sensors.AddRange(forces.OfType<SensorColumns>().OrderBy(f => f.Kind == SensorKind.Acceleration ? 0 : 1).Take(1));
        var gravity = Triples(table, ColumnKind.Gravity).Select(t => Force(table, t, SensorKind.Gravity)).FirstOrDefault();
        if (gravity is { Kind: SensorKind.Gravity })
        {
            sensors.Add(gravity);
        }

        if (Triples(table, ColumnKind.WithoutGravity).FirstOrDefault() is { } free
            && sensors.All(s => s.Kind != SensorKind.AccelerationWithoutGravity))
        {
            var freeUnit = free[0].Meaning.Unit is { Length: > 0 } said && Forces.Any(f => f.Unit == said) ? said : gravity?.UnitTaken ?? "m/s²";
            sensors.Add(Made(
                table,
                SensorKind.AccelerationWithoutGravity,
                free,
                freeUnit,
                Forces.First(f => f.Unit == freeUnit).Factor,
                "as the header calls it"));
        }

        if (Triples(table, ColumnKind.TurnRate).FirstOrDefault() is { } turn)
        {
            sensors.Add(Turn(table, turn, overrulings.Word("turn-rate")));
        }

        if (table.Columns.FirstOrDefault(c => c.Meaning.Kind == ColumnKind.Speed && HasNumbers(c)) is { } speed)
        {
            var wanted = overrulings.Word("speed");
            var (name, factor) = SpeedUnit.All.FirstOrDefault(s => s.Name == (wanted ?? speed.Meaning.Unit)) ?? SpeedUnit.All[0];
            sensors.Add(Made(
                table,
                SensorKind.Speed,
                [speed],
                name,
                factor,
                wanted is not null ? Wished : speed.Meaning.Unit.Length > 0 ? "as the header says" : "guessed"));
        }

        if (PositionColumns.Of(table) is { } position)
        {
            sensors.Add(position);
        }

        return sensors;
    }

    private static bool HasNumbers(LogColumn column) => Filled(column) >= 2;

    private static int Filled(LogColumn column)
    {
        var count = 0;
        foreach (var value in column.Values)
        {
            count += double.IsNaN(value) ? 0 : 1;
        }

        return count;
    }

    // The first three columns x, y, z that share a name, by kind, in the order of the file.
    private static IEnumerable<LogColumn[]> Triples(LogTable table, ColumnKind kind) => table.Columns
        .Where(c => c.Meaning.Kind == kind && c.Meaning.Axis.Length > 0 && HasNumbers(c))
        .GroupBy(c => c.Meaning.Group)
        .Select(g => new[] { "x", "y", "z" }.Select(axis => g.FirstOrDefault(c => c.Meaning.Axis == axis)).OfType<LogColumn>().ToArray())
        .Where(t => t.Length == 3);

    private static SensorColumns? Force(LogTable table, LogColumn[] columns, SensorKind kind, string? wanted = null)
    {
        if (Forces.FirstOrDefault(f => f.Unit == wanted) is { Unit: not null } taken)
        {
            return Made(table, kind, columns, taken.Unit, taken.Factor, Wished);
        }

        var length = Quantile(columns, 0.5);
        var said = columns[0].Meaning.Unit;
        var isSaid = Forces.Any(f => f.Unit == said);
        if (wanted is not null)
        {
            var likely = Forces[length is > 0.5 and < 2.0 && wanted == "with gravity" ? 0 : 1];
            var (unit, factor, _, _) = Forces.FirstOrDefault(f => f.Unit == said, likely);
            return Made(
                table, wanted == "with gravity" ? SensorKind.Acceleration : SensorKind.AccelerationWithoutGravity, columns, unit, factor, Wished);
        }

        foreach (var (unit, factor, least, most) in Forces)
        {
            if (length >= least && length <= most)
            {
                return Made(
                    table, kind, columns, unit, factor, Because(isSaid, said, unit, $"its median length is {Text(length)}"), isSaid && said != unit);
            }
        }

        // Shorter than gravity in the unit that is said: taken off by the phone.
        var (name, si, _, _) = Forces.FirstOrDefault(f => f.Unit == said, Forces[1]);
        return kind == SensorKind.Acceleration && length * si < 0.8 * Gravity
            ? Made(table, SensorKind.AccelerationWithoutGravity, columns, name, si, $"its median length is {Text(length)}: gravity is missing", true)
            : null;
    }

    private static SensorColumns Turn(LogTable table, LogColumn[] columns, string? wanted = null)
    {
        if (wanted is "°/s" or "rad/s")
        {
            return Made(table, SensorKind.TurnRate, columns, wanted, wanted == "°/s" ? 1.0 / In.Degrees.Factor : 1.0, Wished);
        }

        const double fastest = 3.0;
        const double calmest = 0.6;
        var high = Quantile(columns, 0.99);
        var said = columns[0].Meaning.Unit;
        var isSaid = said is "rad/s" or "°/s";
        // A car's body seldom turns by more than 3 rad/s, nor for a whole drive by less than 0.6 °/s.
        var isDegrees = said == "°/s" ? high >= calmest : high >= fastest;
        var unit = isDegrees ? "°/s" : "rad/s";
        return Made(table, SensorKind.TurnRate, columns, unit, isDegrees ? 1.0 / In.Degrees.Factor : 1.0,
            Because(isSaid, said, unit, $"99 of 100 values are below {Text(high)}"), isSaid && said != unit);
    }

    private static string Because(bool isSaid, string said, string unit, string numbers) =>
        !isSaid ? numbers : said == unit ? "as the header says, and " + numbers : $"though the header says {said}: {numbers}";

    // Without names: three columns as long as gravity, the next three small, the first that rises is time.
    private static IEnumerable<SensorColumns> Unnamed(LogTable table)
    {
        var columns = table.Columns;
        for (var k = 0; k + 3 <= columns.Length; k++)
        {
            LogColumn[] three = [.. columns.Skip(k).Take(3)];
            if (!three.Any(IsRising) && three.All(HasNumbers)
                && Force(table, three, SensorKind.Acceleration) is { Kind: SensorKind.Acceleration } force)
            {
                yield return force with { Told = force.Told with { IsDoubtful = true } };
                LogColumn[] next = [.. columns.Skip(k + 3).Take(3)];
                if (next.Length == 3 && next.All(HasNumbers) && !next.Any(IsRising))
                {
                    var turn = Turn(table, next);
                    yield return turn with { Told = turn.Told with { IsDoubtful = true } };
                }

                yield break;
            }
        }
    }

    /// <summary>Whether a column rises from row to row.</summary>
    public static bool IsRising(LogColumn column)
    {
        var values = column.Values;
        var (rises, steps) = (0, Math.Min(values.Length - 1, 5000));
        for (var i = 1; i <= steps; i++)
        {
            rises += values[i] >= values[i - 1] ? 1 : 0;
        }

        return steps > 0 && rises > 0.98 * steps && values[steps] > values[0];
    }

    // Of the lengths of some thousand rows.
    private static double Quantile(LogColumn[] columns, double share)
    {
        var n = columns[0].Values.Length;
        var every = Math.Max(1, n / 20_000);
        var lengths = new List<double>();
        for (var i = 0; i < n; i += every)
        {
            var (x, y, z) = (columns[0].Values[i], columns[1].Values[i], columns[2].Values[i]);
            var length = Math.Sqrt((x * x) + (y * y) + (z * z));
            if (double.IsFinite(length))
            {
                lengths.Add(length);
            }
        }

        lengths.Sort();
        return lengths.Count == 0 ? 0.0 : lengths[(int)(share * (lengths.Count - 1))];
    }

    private static SensorColumns Made(
        LogTable table, SensorKind kind, IReadOnlyList<LogColumn> columns, string unit, double factor, string because, bool isDoubtful = false)
    {
        var (about, words) = kind switch
        {
            SensorKind.Acceleration => ("acceleration", "acceleration with gravity"),
            SensorKind.AccelerationWithoutGravity => ("acceleration-without-gravity", "acceleration without gravity"),
            SensorKind.Gravity => ("gravity", "gravity"),
            SensorKind.TurnRate => ("turn-rate", "turn rate"),
            _ => ("speed", "speed"),
        };
        return new SensorColumns(table, kind, columns, unit, factor, new StoryLine(
            about, $"{table.File}: {words} from {string.Join(", ", columns.Select(c => $"'{c.Name}'"))} in {unit}, {because}.", isDoubtful));
    }

    private static string Text(double number) => number.ToString("G3", CultureInfo.InvariantCulture);
}
