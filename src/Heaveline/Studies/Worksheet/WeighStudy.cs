using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Four scales under four wheels.</summary>
public static class WeighStudy
{
    private static readonly UsualReading UsualWheel = UsualReading.Of<Mass>("20 kg", "1500 kg");

    private static readonly UsualReading UsualBase = UsualReading.Of<Length>("1 m", "6 m") with { IsToldBySheet = true };

    private static readonly UsualReading UsualTrack = UsualReading.Of<Length>("0.8 m", "3 m") with { IsToldBySheet = true };

    private static readonly Choice Round = SheetQuestion.Repeated(
        "round", "One round of readings: front left, front right, rear left, rear right. Repeat it.", "FL,FR,RL,RR") with
    {
        Columns =
        [
            new("front left", "kg", "lb"), new("front right", "kg", "lb"), new("rear left", "kg", "lb"), new("rear right", "kg", "lb"),
        ],
    };

    private static readonly Choice Turned = Round with
    {
        Name = "turned",
        Says = "A round with the car standing the other way round on the same scales, by its own wheels. Repeat it.",
    };

    private static readonly Choice Wheelbase = SheetQuestion.Needed("wheelbase", "From front to rear wheel centre.", "LENGTH") with
    { Columns = [new("length", "m", "mm", "in")] };

    private static readonly Choice Track = SheetQuestion.Needed("track", "Front and rear track.", "FRONT,REAR") with
    { Columns = [new("front", "m", "mm", "in"), new("rear", "m", "mm", "in")] };

    /// <summary>The question as a command offers it.</summary>
    public static Question<WeighAsked, SheetAnswer> Question { get; } = SheetQuestion.Of<WeighAsked>(
        "weigh",
        """
        Four-scale weighing, with repeats and the car turned round: what each wheel carries, and where the centre of gravity lies.

        Example:
          heaveline worksheet weigh --round "381 kg ± 1, 362 kg ± 1, 311 kg ± 1, 306 kg ± 1" --turned "379 kg, 364 kg, 313 kg, 304 kg" \
              --wheelbase "2.70 m" --track "1.52 m, 1.51 m"
        """,
        [Round, Turned, Wheelbase, Track],
        Read,
        Run);

    /// <summary>Works the weighing out.</summary>
    /// <param name="asked">The readings.</param>
    /// <exception cref="RefusedValueException">There are no readings, or a length is not above zero.</exception>
    public static SheetAnswer Run(WeighAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var sheet = WeighingSheet.Of(asked.Rounds, asked.Wheelbase, asked.FrontTrack, asked.RearTrack);
        var w = sheet.Weighing;
        string Kilograms(Amount<Mass> mass) => SheetTable.Text(mass, "kg");
        return new SheetAnswer
        {
            Sheet = Question.Word,
            Table = new SheetTable("Weighing")
                .Add("front-left", "front left wheel", "kg", "F1", w.FrontLeft)
                .Add("front-right", "front right wheel", "kg", "F1", w.FrontRight)
                .Add("rear-left", "rear left wheel", "kg", "F1", w.RearLeft)
                .Add("rear-right", "rear right wheel", "kg", "F1", w.RearRight)
                .Add("total", "the whole car", "kg", "F1", sheet.Total)
                .Add("front-axle", "front axle", "kg", "F1", sheet.FrontAxle)
                .Add("rear-axle", "rear axle", "kg", "F1", sheet.RearAxle)
                .Add("front-share", "front axle's share", "%", "F2", sheet.FrontShare)
                .Add("cross-share", "cross weight (front right + rear left)", "%", "F2", sheet.CrossShare)
                .Add("behind-front-axle", "centre of gravity behind the front axle", "mm", "F0", sheet.BehindFrontAxle)
                .Add("left-of-middle", "centre of gravity left of the middle", "mm", "F1", sheet.LeftOfMiddle)
                .Add("spread", "largest difference between repeats", "kg", "F1", sheet.Spread)
                .Add("turn-change", "largest change by turning the car", "kg", "F1", sheet.TurnChange)
                .Facts,
            Notes = [.. sheet.Notes],
            From = SheetQuestion.Count(asked.Rounds.Length, "round", "rounds") + " on four scales",
            Values =
            [
                new("front-left", Kilograms(w.FrontLeft)), new("front-right", Kilograms(w.FrontRight)), new("rear-left", Kilograms(w.RearLeft)),
                new("rear-right", Kilograms(w.RearRight)), new("front", Kilograms(sheet.FrontAxle)), new("rear", Kilograms(sheet.RearAxle)),
            ],
            CarFile =
            [
                $"weighing: {{front-left: {Kilograms(w.FrontLeft)}, front-right: {Kilograms(w.FrontRight)}, "
                + $"rear-left: {Kilograms(w.RearLeft)}, rear-right: {Kilograms(w.RearRight)}}}",
            ],
        };
    }

    private static WeighAsked? Read(SheetReader reader)
    {
        WheelReadings[] rounds = [.. Rounds(reader, Round, turned: false), .. Rounds(reader, Turned, turned: true)];
        var wheelbase = reader.Amount<Length>(Wheelbase, UsualBase);
        var tracks = reader.Rows<Length>(Track, 2, UsualTrack).ToList();
        if (rounds.Length == 0 && !reader.IsRefused)
        {
            reader.Missing(Round);
        }

        return reader.IsRefused
            ? null
            : new WeighAsked
            {
                Typed = reader.Typed,
                Rounds = [.. rounds],
                Wheelbase = wheelbase,
                FrontTrack = tracks[0][0],
                RearTrack = tracks[0][1],
            };
    }

    private static IEnumerable<WheelReadings> Rounds(SheetReader reader, Choice choice, bool turned) =>
        reader.Rows<Mass>(choice, 4, UsualWheel).Select(wheels => new WheelReadings(wheels[0], wheels[1], wheels[2], wheels[3], turned));
}
