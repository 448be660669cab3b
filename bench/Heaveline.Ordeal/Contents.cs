using System.Globalization;
using System.Text;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Press;
using Heaveline.Reports;

namespace Heaveline.Ordeal;

/// <summary>What the writer writes: contents with a number in them, each told from a torn one by being made again.</summary>
internal static class Contents
{
    /// <summary>How many figures and reports there are.</summary>
    public const int Made = 3;

    /// <summary>A table of numbers; its length goes with n, so that a torn one fits no other.</summary>
    public static byte[] Csv(int n)
    {
        var text = new StringBuilder(FormattableString.Invariant($"n,{n}\n"));
        for (var k = 0; k < 200 + (37 * (n % 100)); k++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{k},{(k * 7919L * (n + 1)) % 10007}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>Number of such a table; null where it is torn.</summary>
    public static int? NumberOfCsv(byte[] bytes) => Number(bytes, "n,", Csv);

    /// <summary>A car file of a garage, unfinished but a car file.</summary>
    public static string Car(int n) => FormattableString.Invariant($"car: Fern {n}\n")
        + string.Concat(Enumerable.Range(0, 50 + (29 * (n % 40)))
            .Select(k => FormattableString.Invariant($"# {k} {(k * 104729L * (n + 1)) % 7907}\n")));

    /// <summary>Number of such a file; null where it is torn.</summary>
    public static int? NumberOfCar(byte[] bytes) => Number(bytes, "car: Fern ", n => Encoding.UTF8.GetBytes(Car(n)));

    /// <summary>A figure.</summary>
    public static Figure Figure(int n)
    {
        double[] x = [.. Enumerable.Range(0, 500 + (100 * n)).Select(k => 0.01 * k)];
        return new Figure
        {
            Title = FormattableString.Invariant($"Figure {n}"),
            AltText = "A wave.",
            SharedX = new Axis { Label = "time", Unit = "s" },
            Panels =
            [
                new ChartPanel
                {
                    Y = new Axis { Label = "height", Unit = "mm" },
                    Traces = [Trace.From("", x, [.. x.Select(t => Math.Sin((n + 1) * t))])],
                },
            ],
        };
    }

    /// <summary>A report.</summary>
    public static Report Report(int n) => new()
    {
        Title = FormattableString.Invariant($"Report {n}"),
        Program = "Heaveline",
        Parts =
        [
            .. Enumerable.Range(0, 1 + n).Select(k => new ReportPart
            {
                Heading = FormattableString.Invariant($"Part {k}"),
                Blocks = [Paragraph.Of(string.Concat(Enumerable.Repeat("A sentence of a report. ", 30)))],
            }),
        ],
    };

    /// <summary>The bytes of every figure or report in the format of a file's name.</summary>
    public static IReadOnlyList<byte[]> Whole(string file) =>
    [
        .. Enumerable.Range(0, Made).Select(n =>
            file.StartsWith("figure", StringComparison.Ordinal) ? FigureFile.Of(Figure(n), file) : ReportFile.Of(Report(n), file)),
    ];

    private static int? Number(byte[] bytes, string head, Func<int, byte[]> make)
    {
        var line = Encoding.UTF8.GetString(bytes).Split('\n')[0];
        return line.StartsWith(head, StringComparison.Ordinal)
            && int.TryParse(line[head.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            && bytes.AsSpan().SequenceEqual(make(n)) ? n : null;
    }
}
