using System.Globalization;
using Heaveline.Drives.Planning;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The card of a test day: the steps, and a line for each pass to write on.</summary>
public static class PlanCardFigure
{
    private const int Wide = 105;

    /// <summary>The card, page wide.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="steps">The steps in order.</param>
    /// <param name="drive">The drive.</param>
    /// <param name="passes">Passes in each state.</param>
    /// <param name="states">The states of the car.</param>
    /// <param name="safety">What must stand below.</param>
    public static Figure Of(string title, IReadOnlyList<string> steps, TestDrive drive, int passes, IReadOnlyList<string> states, string safety)
    {
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(states);
        var each = (passes + 2) / 3;
        return new Figure
        {
            Title = title,
            AltText = $"A card: {string.Join(" ", steps)}",
            Caption = $"Hump: {drive.Hump.Road.Caption}. {safety}",
            Size = FigureSize.Page,
            Panels =
            [
                new TablePanel
                {
                    Columns = [new TableColumn { Heading = "Steps", Alignment = ColumnAlignment.Left }],
                    Rows = [.. steps.SelectMany(Broken).Select(line => TableRow.Of(line))],
                },
                new TablePanel
                {
                    Columns =
                    [
                        new TableColumn { Heading = "Pass", Alignment = ColumnAlignment.Left },
                        new TableColumn { Heading = "speed", Unit = "km/h" },
                        .. states.SelectMany(s => new[]
                        {
                            new TableColumn { Heading = states.Count > 1 ? $"driven {s}" : "driven", Unit = "km/h" },
                            new TableColumn { Heading = states.Count > 1 ? $"note {s}" : "note", Alignment = ColumnAlignment.Left },
                        }),
                    ],
                    Rows =
                    [
                        .. Enumerable.Range(0, 3 * each).Select(k => TableRow.Of(
                        [
                            (k + 1).ToString(CultureInfo.InvariantCulture),
                            In.KilometresPerHour.Of(drive.Speeds[Mixed(k)]).ToString("0.#", CultureInfo.InvariantCulture),
                            .. states.SelectMany(_ => new[] { "______", "________________" }),
                        ])),
                    ],
                },
            ],
        };
    }

    // Each three passes hold each speed once, in another order than the three before: a day that warms the dampers does not go with the speed.
    private static int Mixed(int pass) => ((pass % 3 * (pass / 3 % 2 == 0 ? 1 : 2)) + (pass / 3)) % 3;

    /// <summary>A sentence over lines that fit the page.</summary>
    internal static IEnumerable<string> Broken(string step)
    {
        var line = "";
        foreach (var word in step.Split(' '))
        {
            if (line.Length + word.Length + 1 > Wide)
            {
                yield return line;
                line = "    ";
            }

            line += (line.Trim().Length == 0 ? "" : " ") + word;
        }

        yield return line;
    }
}
