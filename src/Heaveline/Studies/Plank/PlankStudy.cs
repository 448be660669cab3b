using Heaveline.Drives.Planning;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Which planks, laid how and driven how fast, excite almost only one motion of a car's body.</summary>
public static class PlankStudy
{
    private static readonly Choice Boards = new()
    {
        Name = "boards",
        Kind = ChoiceKind.Quantity,
        Says = "The boards there are: thickness x width, and x length where it is not 4.2 m, with commas between. Without it: 22 and 45 mm thick, "
            + "95, 145 and 195 mm wide.",
        HelpName = "BOARDS",
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<PlankAsked, PlankAnswer> Question { get; } = new()
    {
        Word = "plank",
        Says =
            """
            Find rows of planks that, driven at 15 to 30 km/h, leave almost only one motion of this car: the one of its two body modes, the other, or
            pitch alone; with the cutting list. Each row is found by the car's closed-form response and checked by passes of the whole car.

            Examples:
              heaveline plank examples/garage/fern-saloon.yaml --load driver
              heaveline plank examples/garage/fern-saloon.yaml --boards "22 x 195 mm, 45 x 145 mm" --figure planks.pdf
            """,
        Choices = [Choices.Car, Choices.Load, Boards],
        CsvSays = "Write the table to FILE.",
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Finds the rows.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so, or stands on a stop already.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static PlankAnswer Run(PlankAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var wish = new PlankWish { Model = asked.Car.Model, Boards = asked.Boards };
        return new PlankAnswer
        {
            Asked = asked,
            Modes = BodyModes.Of(wish.Model),
            Finds = PlankMaker.Of(wish, run.Degree, run.Progress, run.Cancellation),
        };
    }

    private static PlankAsked? Read(AskedReader reader)
    {
        var boards = reader.Text(Boards) is { } words ? BoardList.Read(reader, Boards, words) : BoardSize.Usual;
        var car = reader.Car(Choices.Car, Choices.Load);
        return reader.IsRefused ? null : new PlankAsked { Car = car!, Boards = boards };
    }
}
