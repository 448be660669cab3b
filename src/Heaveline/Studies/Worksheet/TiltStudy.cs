using Heaveline.Cars;
using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Height of the centre of gravity by lifting one axle.</summary>
public static class TiltStudy
{
    private static readonly UsualReading UsualLoad = UsualReading.Of<Mass>("40 kg", "6000 kg");

    private static readonly UsualReading UsualAngle = UsualReading.Of<Angle>("1°", "60°") with { IsToldBySheet = true };

    private static readonly UsualReading UsualBase = UsualReading.Of<Length>("1 m", "6 m");

    private static readonly UsualReading UsualRadius = UsualReading.Of<Length>("0.15 m", "0.55 m");

    private static readonly UsualReading UsualUnsprung = UsualReading.Of<Mass>("10 kg", "1000 kg");

    private static readonly ChoiceColumn[] OfMass = [new("mass", "kg", "lb")];

    private static readonly Choice Total = SheetQuestion.Needed("total", "Weight of the whole car.", "MASS") with
    { Columns = OfMass };

    private static readonly Choice Level = SheetQuestion.Needed("level", "Load of the axle that stays down, car level.", "MASS") with
    { Columns = OfMass };

    private static readonly Choice Lifted = SheetQuestion.Needed("lifted", "Load of the same axle, the other one lifted.", "MASS") with
    { Columns = OfMass };

    private static readonly Choice Angle = SheetQuestion.Needed("angle", "By how much the car was turned from level.", "ANGLE") with
    { Columns = [new("angle", "°")] };

    private static readonly Choice Wheelbase = SheetQuestion.Needed("wheelbase", "From front to rear wheel centre.", "LENGTH") with
    { Columns = [new("length", "m", "mm", "in")] };

    private static readonly Choice Radius = SheetQuestion.Needed(
        "radius", "Height of the front and the rear wheel centres, car level.", "FRONT,REAR") with
    { Columns = [new("front", "m", "mm", "in"), new("rear", "m", "mm", "in")] };

    private static readonly Choice RearLifted = SheetQuestion.Tick("rear-lifted", "The rear axle was lifted; the front when left out.");

    private static readonly Choice NotLocked = SheetQuestion.Tick("not-locked", "The suspension was free to move.");

    private static readonly Choice Unsprung = SheetQuestion.Choice(
        "unsprung", "All unsprung mass, to give the body's own height for the car file.", "MASS") with
    { Columns = OfMass };

    /// <summary>The question as a command offers it.</summary>
    public static Question<TiltAsked, SheetAnswer> Question { get; } = SheetQuestion.Of<TiltAsked>(
        "tilt",
        """
        Height of the centre of gravity from a tilt test, with its error budget.

        Example:
          heaveline worksheet tilt --total "1360 kg ± 2" --level "618 kg ± 1" --lifted "647 kg ± 1" --angle "12° ± 0.3°" --wheelbase "2.70 m" \
              --radius "0.31 m, 0.31 m" --unsprung "162 kg ± 10"
        """,
        [Total, Level, Lifted, Angle, Wheelbase, Radius, RearLifted, NotLocked, Unsprung],
        Read,
        Run);

    /// <summary>Works the tilt test out.</summary>
    /// <param name="asked">The readings.</param>
    /// <exception cref="RefusedValueException">The readings cannot be of one car.</exception>
    public static SheetAnswer Run(TiltAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var readings = asked.Readings;
        var sheet = TiltSheet.Of(readings);
        var table = new SheetTable("Tilt test")
            .Add("moved", "load moved to the lower axle", "kg", "F1", sheet.Moved)
            .Add("above-axle-line", "centre of gravity above the axle line", "mm", "F0", sheet.AboveAxleLine)
            .Add("above-ground", "centre of gravity above the ground", "mm", "F0", sheet.AboveGround);
        string[] lines = [];
        SheetValue[] values = [];
        if (asked.Unsprung is { } mass)
        {
            var radius = new Amount<Length>(0.5 * (readings.FrontRadius.Si + readings.RearRadius.Si), readings.FrontRadius.Doubt);
            var height = sheet.BodyHeight(readings.Total, mass, radius);
            table.Add("body-height", "the body's alone, for the car file", "mm", "F0", height);
            values = [new("body-height", SheetTable.Text(height, "m"))];
            lines = ["body:", $"  centre-of-gravity-height: {SheetTable.Text(height, "m")}"];
        }

        foreach (var part in sheet.Budget)
        {
            var key = "part-" + part.What.Replace(' ', '-').Replace("'", "", StringComparison.Ordinal);
            table.Add(key, $"± from the {part.What}", "mm", "F1", In.Millimetres.Of(part.HalfWidth));
        }

        return new SheetAnswer
        {
            Sheet = Question.Word,
            Table = table.Facts,
            Notes =
            [
                .. sheet.Notes,
                .. asked.Unsprung is null
                    ? new[]
                    {
                        new SheetNote(
                            "unsprung-missing", "The car file wants the body's height without wheels and axles: give the unsprung mass too."),
                    }
                    : [],
            ],
            From = FormattableString.Invariant(
                $"a tilt of {In.Degrees.Of(readings.Angle.Si):0.#}°, the {(readings.LiftedEnd == AxleEnd.Rear ? "rear" : "front")} lifted"),
            Values = [.. values],
            CarFile = [.. lines],
        };
    }

    private static TiltAsked? Read(SheetReader reader)
    {
        var (total, level, lifted) = (
            reader.Amount<Mass>(Total, UsualLoad), reader.Amount<Mass>(Level, UsualLoad), reader.Amount<Mass>(Lifted, UsualLoad));
        var (angle, wheelbase) = (reader.Amount<Angle>(Angle, UsualAngle), reader.Amount<Length>(Wheelbase, UsualBase));
        var radii = reader.Rows<Length>(Radius, 2, UsualRadius).ToList();
        var (rear, free) = (reader.IsTicked(RearLifted), reader.IsTicked(NotLocked));
        var unsprung = reader.Maybe<Mass>(Unsprung, UsualUnsprung);
        if (reader.IsRefused)
        {
            return null;
        }

        var readings = new TiltReadings
        {
            Total = total,
            Level = level,
            Lifted = lifted,
            Angle = angle,
            Wheelbase = wheelbase,
            FrontRadius = radii[0][0],
            RearRadius = radii[0][1],
            LiftedEnd = rear ? AxleEnd.Rear : AxleEnd.Front,
            Locked = !free,
        };
        return new TiltAsked { Typed = reader.Typed, Readings = readings, Unsprung = unsprung };
    }
}
