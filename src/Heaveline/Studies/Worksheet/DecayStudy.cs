using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Swings that die after a push.</summary>
public static class DecayStudy
{
    private static readonly UsualReading UsualHeight = UsualReading.Of<Length>("20 mm", "2000 mm");

    private static readonly UsualReading UsualFriction = UsualReading.Of<Length>("0 mm", "15 mm");

    private static readonly UsualReading UsualWheelRate = UsualReading.Of<Stiffness>("5 N/mm", "400 N/mm");

    private static readonly UsualReading UsualTyre = UsualReading.Of<Stiffness>("50 N/mm", "1500 N/mm");

    private static readonly ChoiceColumn[] OfRate = [new("rate", "N/mm", "lbf/in")];

    private static readonly Choice Rest = SheetQuestion.Needed(
        "rest", "Height at which it comes to rest, from any zero: the wing above the floor.", "LENGTH") with
    { Columns = [new("height", "mm", "cm", "in")] };

    private static readonly Choice Turn = SheetQuestion.Repeated(
        "turn",
        "Height at which it turns, above and below, one after another, filmed beside a ruler; without a doubt good to 1 mm. Repeat it.",
        "LENGTH") with
    { IsNeeded = true, Columns = [new("height", "mm", "cm", "in")] };

    private static readonly Choice Friction = SheetQuestion.Choice(
        "friction",
        "Half of how far apart it comes to rest, let down gently and let up gently; the height of rest is then the middle of both. Without it "
            + "friction is counted as damping, unless four turns or more tell it.",
        "LENGTH") with
    { Columns = [new("half", "mm", "cm", "in")] };

    private static readonly Choice WheelRate = SheetQuestion.Choice(
        "wheel-rate", "Rate of one spring at its wheel, to take the tyre's give out.", "RATE") with
    { Columns = OfRate };

    private static readonly Choice Tyre = SheetQuestion.Choice("tyre", "Rate of one tyre.", "RATE") with
    { Columns = OfRate };

    /// <summary>The question as a command offers it.</summary>
    public static Question<DecayAsked, SheetAnswer> Question { get; } = SheetQuestion.Of<DecayAsked>(
        "decay",
        """
        Share of critical damping from swings that die: one end pushed down and let go, filmed beside a ruler.

        Example:
          heaveline worksheet decay --rest "652 mm" --turn "590 mm" --turn "675 mm" --turn "643 mm" --friction "2 mm ± 1" \
            --wheel-rate "21 N/mm" --tyre "200 N/mm"
        """,
        [Rest, Turn, Friction, WheelRate, Tyre],
        Read,
        Run);

    /// <summary>Works the swings out.</summary>
    /// <param name="asked">The heights.</param>
    /// <exception cref="RefusedValueException">There are too few turns, or the swings do not die about the height of rest.</exception>
    public static SheetAnswer Run(DecayAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var sheet = DecaySheet.Of(asked.Rest, asked.Turns, asked.WheelRate, asked.Tyre, asked.Friction);
        var ratio = SheetTable.Text(sheet.AtWheel, "");
        var table = new SheetTable("Swings that die")
            .Add("swing", "share of critical damping of the swing", "", "F3", sheet.Swing)
            .Add("at-wheel", "the same at the wheel, without the tyre's give", "", "F3", sheet.AtWheel);
        if (sheet.Friction is { } friction)
        {
            table.Add("friction", "friction's half-width, taken out", "mm", "F1", friction);
        }

        return new SheetAnswer
        {
            Sheet = Question.Word,
            Table = table.Add("half-swings", "half swings it is taken from", "–", "F0", sheet.HalfSwings).Facts,
            Notes = [.. sheet.Notes],
            From = SheetQuestion.Count(asked.Turns.Length, "turn", "turns") + " of a swing that dies",
            Values = [new("damping-ratio", ratio)],
            CarFile = [$"damper: {{damping-ratio: {ratio}}}"],
        };
    }

    private static DecayAsked? Read(SheetReader reader)
    {
        var rest = reader.Amount<Length>(Rest, UsualHeight);
        var turns = reader.Rows<Length>(Turn, 1, UsualHeight).Select(row => row[0]).ToList();
        var friction = reader.Maybe<Length>(Friction, UsualFriction);
        var (wheelRate, tyre) = (reader.Maybe<Stiffness>(WheelRate, UsualWheelRate), reader.Maybe<Stiffness>(Tyre, UsualTyre));
        return reader.IsRefused
            ? null
            : new DecayAsked { Typed = reader.Typed, Rest = rest, Turns = [.. turns], Friction = friction, WheelRate = wheelRate, Tyre = tyre };
    }
}
