using System.Globalization;
using System.Text;
using Heaveline.Tests.Drives;

namespace Heaveline.Tests.Files.Drives;

/// <summary>A planted drive as a logger would write it, in any of the ways that loggers have.</summary>
internal sealed record LogWriter
{
    public PlantedDrive Drive { get; init; } = new() { Length = 45.0 };

    public char Separator { get; init; } = ',';

    public bool HasDecimalComma { get; init; }

    public string TimeName { get; init; } = "time (s)";

    public Func<double, string> Time { get; init; } = t => t.ToString("F6", CultureInfo.InvariantCulture);

    public string ForceUnit { get; init; } = "(m/s²)";

    public double ForceScale { get; init; } = 1.0;

    public string TurnUnit { get; init; } = "(rad/s)";

    public double TurnScale { get; init; } = 1.0;

    public string SpeedUnit { get; init; } = "(m/s)";

    public double SpeedScale { get; init; } = 1.0;

    public bool HasHeader { get; init; } = true;

    /// <summary>One text: acceleration, turn rate and the last fix of the speed in every row.</summary>
    public string Whole
    {
        get
        {
            var times = Drive.Instants;
            var (force, turn) = (Drive.Force(times), Drive.Turn(times));
            var text = new StringBuilder();
            if (HasHeader)
            {
                Row(text, [TimeName, .. Axes("accel", ForceUnit), .. Axes("gyro", TurnUnit), $"speed{SpeedUnit}"]);
            }

            for (var i = 0; i < times.Length; i++)
            {
                Row(
                    text,
                    [
                        Time(times[i]),
                        .. Cells(force, i, ForceScale),
                        .. Cells(turn, i, TurnScale),
                        Cell(Drive.SpeedAt(Math.Floor(times[i])) * SpeedScale),
                    ]);
            }

            return text.ToString();
        }
    }

    /// <summary>The accelerometer, the gyro and the speed in a text each.</summary>
    public IReadOnlyList<(string Name, string Text)> Apart
    {
        get
        {
            var times = Drive.Instants;
            return
            [
                ("Accelerometer.csv", Table(times, Drive.Force(times), ["x", "y", "z"], ForceScale)),
                ("Gyroscope.csv", Table(times, Drive.Turn(times), ["x", "y", "z"], TurnScale)),
                ("Location.csv", Table(Drive.Fixes, [[.. Drive.Fixes.Select(Drive.SpeedAt)]], [$"speed{SpeedUnit}"], SpeedScale)),
            ];
        }
    }

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private string Table(double[] times, double[][] columns, string[] names, double scale)
    {
        var text = new StringBuilder();
        Row(text, [TimeName, .. names]);
        for (var i = 0; i < times.Length; i++)
        {
            Row(text, [Time(times[i]), .. Cells(columns, i, scale)]);
        }

        return text.ToString();
    }

    private static IEnumerable<string> Axes(string name, string unit) => new[] { "X", "Y", "Z" }.Select(axis => name + axis + unit);

    private static IEnumerable<string> Cells(double[][] columns, int i, double scale) => columns.Select(c => Cell(c[i] * scale));

    private static string Cell(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private void Row(StringBuilder text, IEnumerable<string> cells) =>
        text.AppendJoin(Separator, cells.Select(c => HasDecimalComma ? c.Replace('.', ',') : c)).Append("\r\n");
}
