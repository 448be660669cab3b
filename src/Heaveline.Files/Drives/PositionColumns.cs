using System.Globalization;
using Heaveline.Drives;
using Heaveline.Quantities;

namespace Heaveline.Files.Drives;

/// <summary>Latitude and longitude among the columns of a text, in decimal degrees or not at all.</summary>
internal static class PositionColumns
{
    private const double Pole = 90.0;
    private const double DateLine = 180.0;

    // Of so many fixes out of a hundred that lie nowhere on Earth it is no position.
    private const double MostOff = 0.02;

    /// <summary>
    /// The position of a text; null where it has none, or none in decimal degrees. Columns that bear each other's names are put right where a
    /// latitude beyond the pole tells.
    /// </summary>
    /// <param name="table">The text.</param>
    public static SensorColumns? Of(LogTable table)
    {
        // In g it is an acceleration to the side.
        LogColumn? Column(ColumnKind kind) => table.Columns.FirstOrDefault(
            c => c.Meaning.Kind == kind && c.Meaning.Unit is not ("g" or "mg" or "m/s²") && Filled(c) >= 2);
        if (Column(ColumnKind.Latitude) is not { } latitude || Column(ColumnKind.Longitude) is not { } longitude)
        {
            return null;
        }

        var isPlain = Off(latitude, Pole) <= MostOff && Off(longitude, DateLine) <= MostOff;
        var isSwapped = !isPlain && Off(longitude, Pole) <= MostOff && Off(latitude, DateLine) <= MostOff;
        if (!isPlain && !isSwapped)
        {
            return null;
        }

        var nowhere = Enumerable.Range(0, latitude.Values.Length).Count(i => latitude.Values[i] == 0.0 && longitude.Values[i] == 0.0);
        var accuracy = Column(ColumnKind.PositionAccuracy);
        var text = $"{table.File}: position from '{latitude.Name}', '{longitude.Name}' in decimal °"
            + (accuracy is null ? "" : $", as sure as '{accuracy.Name}' says in m")
            + (isSwapped ? ", each taken for the other: no latitude is beyond 90°" : "")
            + (nowhere > 0 ? string.Create(CultureInfo.InvariantCulture, $"; {nowhere} rows at 0°, 0° are no fix") : "")
            + ". It only tells bumps of one place; nothing of it is printed or drawn.";
        LogColumn[] columns = [.. isSwapped ? [longitude, latitude] : new[] { latitude, longitude }, .. accuracy is null ? [] : new[] { accuracy }];
        return new SensorColumns(
            table, SensorKind.Position, columns, "°", 1.0 / In.Degrees.Factor, new StoryLine("position", text, isSwapped));
    }

    /// <summary>Why a text's latitude and longitude are no position, a story's line; null where they are, or where it has none.</summary>
    /// <param name="table">The text.</param>
    public static StoryLine? WhyNot(LogTable table)
    {
        var named = table.Columns.Where(c => c.Meaning.Kind is ColumnKind.Latitude or ColumnKind.Longitude && Filled(c) + c.Bad >= 2)
            .ToList();
        return named.Count == 0 || Of(table) is not null
            ? null
            : new StoryLine(
                "position",
                $"{table.File}: {string.Join(", ", named.Select(c => $"'{c.Name}'"))} hold no position in decimal degrees: left out.",
                true);
    }

    /// <summary>Whether a row is a fix: on Earth, and not at 0°, 0°, which loggers write before the first.</summary>
    /// <param name="position">The columns of the position.</param>
    /// <param name="row">The row.</param>
    public static bool IsFix(SensorColumns position, int row)
    {
        var (latitude, longitude) = (position.Columns[0].Values[row], position.Columns[1].Values[row]);
        return (latitude != 0.0 || longitude != 0.0) && Math.Abs(latitude) <= Pole && Math.Abs(longitude) <= DateLine;
    }

    private static int Filled(LogColumn column)
    {
        var count = 0;
        foreach (var value in column.Values)
        {
            count += double.IsNaN(value) ? 0 : 1;
        }

        return count;
    }

    private static double Off(LogColumn column, double most)
    {
        var count = 0;
        foreach (var value in column.Values)
        {
            count += Math.Abs(value) > most ? 1 : 0;
        }

        return count / (double)Math.Max(Filled(column), 1);
    }
}
