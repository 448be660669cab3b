using System.Globalization;
using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>In which rhythm a headlamp flashes after a bump at night.</summary>
public static class FlashStudy
{
    internal static readonly Choice Lamp = new()
    {
        Name = "lamp",
        Kind = ChoiceKind.Film,
        Says = "The kept brightness of an oncoming headlamp (.csv), or a film of it with --marks.",
        IsArgument = true,
        Range = (1, 1),
    };

    private static readonly Choice Mark = new()
    {
        Name = "marks",
        Kind = ChoiceKind.Word,
        Says = "Where the lamp is in the film and when: pixels to the right and down from the upper left, and the film's time.",
        HelpName = "X,Y,TIME",
    };

    internal static readonly Choice From = new()
    {
        Name = "after",
        Kind = ChoiceKind.Quantity,
        Says = "When the rear wheels have left the bump, in the film's time; the lamp's quickest change when left out.",
        HelpName = "TIME",
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<FlashAsked, FlashAnswer> Question { get; } = new()
    {
        Word = "flash",
        Says =
            """
            Say in which rhythm the headlamp of an oncoming car flashes after a bump at night, and how fast that dies away: the pitch, or twice the
            pitch where the beam's edge sweeps the camera both ways. Nothing else of the car is told by it.

            Examples:
              heaveline flash examples/films/lamp.csv --after "0.5 s"
              heaveline flash night.mp4 --marks "812, 440, 1.2 s"
            """,
        Choices = [Lamp, Mark, From],
        CsvSays = "Write the table to FILE.",
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Reads the rhythm.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">No rhythm is seen.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static FlashAnswer Run(FlashAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var flash = LampFlash.Of(asked.Lamp, asked.From, run.Cancellation);
        run.Progress?.Report(1.0);
        return new FlashAnswer { Asked = asked, Flash = flash };
    }

    private static FlashAsked? Read(AskedReader reader)
    {
        var mark = reader.Text(Mark) is { } words ? Marked(reader, words) : null;
        var lamp = !reader.IsRefused && reader.Text(Lamp) is { } name ? reader.Of(Lamp, f => f.Lamp(name, mark)) : null;
        var from = reader.Given.Of(From) is null ? null : reader.Amount<Time>(From, "1.2 s");
        return reader.IsRefused ? null : new FlashAsked { Name = reader.Text(Lamp)!.Split('/', '\\')[^1], Lamp = lamp!, From = from?.Si };
    }

    private static LampMark? Marked(AskedReader reader, string words)
    {
        var parts = words.Split(',');
        if (parts.Length == 3 && Pixels(parts[0]) is { } x && Pixels(parts[1]) is { } y
            && reader.Amount<Time>(Mark, parts[2].Trim(), "1.2 s") is { } time)
        {
            return new LampMark(new PicturePoint(x, y), time.Si);
        }

        if (!reader.IsRefused)
        {
            reader.Object(Mark.Name, $"'{words}' is no mark of a lamp: give pixels to the right, pixels down and the time, as \"812, 440, 1.2 s\".");
        }

        return null;
    }

    private static double? Pixels(string words) =>
        double.TryParse(words, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
