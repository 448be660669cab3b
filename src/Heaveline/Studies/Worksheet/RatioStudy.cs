using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A wheel jacked through its travel.</summary>
public static class RatioStudy
{
    private static readonly UsualReading UsualTravel = UsualReading.Of<Length>("-400 mm", "400 mm");

    private static readonly Choice Stop = SheetQuestion.Repeated(
        "stop",
        "Wheel travel and spring (or damper) travel from the state described, bump positive; without a doubt good to half its last digit. Repeat it.",
        "WHEEL,ELEMENT") with
    {
        IsNeeded = true,
        Columns = [new("wheel, bump positive", "mm", "cm", "in"), new("spring or damper", "mm", "cm", "in")],
    };

    // Over which travel of the wheel a pair of travels is told: what people jack.
    private const double Jacked = 0.050;

    /// <summary>The question as a command offers it.</summary>
    public static Question<RatioAsked, SheetAnswer> Question { get; } = SheetQuestion.Of<RatioAsked>(
        "ratio",
        """
        A motion ratio from a sweep of wheel and spring travels, with its interval.

        Example:
          heaveline worksheet ratio --stop "-40 mm, -24.3 mm" --stop "-20 mm, -12.2 mm" --stop "0 mm, 0 mm" --stop "20 mm, 12.5 mm" \
              --stop "40 mm, 25.3 mm"
        """,
        [Stop],
        Read,
        Run);

    /// <summary>Works the sweep out.</summary>
    /// <param name="asked">The sweep.</param>
    /// <exception cref="RefusedValueException">There are too few stops, or their travels do not rise together.</exception>
    public static SheetAnswer Run(RatioAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var sheet = RatioSheet.Of([.. asked.Stops.Select(s => s.Wheel)], [.. asked.Stops.Select(s => s.Element)]);
        var sweep = asked.Stops.Select(s => FormattableString.Invariant(
            $"[{In.Millimetres.Of(s.Wheel.Si):0.##} mm, {In.Millimetres.Of(s.Element.Si - sheet.Offset):0.##} mm]"));
        return new SheetAnswer
        {
            Sheet = Question.Word,
            Table = new SheetTable("Motion ratio")
                .Add("ratio", "element travel per wheel travel", "", "F3", sheet.Ratio.AtReference)
                .Add("change", "its change per metre of bump", "1/m", "F2", sheet.Ratio.PerTravel)
                .Add("least", "least over the travel measured", "–", "F3", sheet.Range[0])
                .Add("greatest", "greatest over the travel measured", "–", "F3", sheet.Range[1])
                .Add("worst-miss", "largest miss of the curve", "mm", "F2", In.Millimetres.Of(sheet.WorstMiss))
                .Facts,
            Notes = [.. sheet.Notes],
            From = SheetQuestion.Count(asked.Stops.Length, "stop", "stops") + " of a jacked wheel, the ratio near rest",
            Values =
            [
                new("ratio", SheetTable.Text(sheet.Ratio.AtReference, "")),
                new("moves", $"{SheetTable.Text(Moved(sheet.Ratio.AtReference), "mm")} for {In.Millimetres.Of(Jacked)} mm at the wheel"),
            ],
            CarFile = [$"sweep: [{string.Join(", ", sweep)}]"],
        };
    }

    private static Amount<Length> Moved(Amount<Plain> ratio) => new(Jacked * ratio.Si, new Doubt(Jacked * ratio.Doubt.HalfWidth));

    private static RatioAsked? Read(SheetReader reader)
    {
        var stops = reader.Rows(Stop, 2).ToList();
        var wheels = reader.Readings<Length>(stops.Select(s => s[0]), UsualTravel);
        var elements = reader.Readings<Length>(stops.Select(s => s[1]), UsualTravel);
        return reader.IsRefused ? null : new RatioAsked { Typed = reader.Typed, Stops = [.. wheels.Zip(elements)] };
    }
}
