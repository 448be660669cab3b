using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>A wheel raised and lowered on a jack that stands on a scale.</summary>
public static class WheelRateStudy
{
    private static readonly UsualReading UsualGap = UsualReading.Of<Length>("50 mm", "1500 mm");

    private static readonly UsualReading UsualForce = UsualReading.Of<Force>("0 N", "100000 N");

    private static readonly Choice Up = SheetQuestion.Repeated(
        "up",
        "Gap from the wheel's centre up to the wing and the scale's reading, the jack going up; without a doubt good to half its last digit. "
        + "Repeat it.",
        "GAP,FORCE") with
    { IsNeeded = true, Columns = [new("gap", "mm", "cm", "in"), new("force or scale", "N", "kg", "lbf", "lb")] };

    private static readonly Choice Down = Up with { Name = "down", Says = "The same, the jack coming down. Repeat it." };

    private static readonly Choice Rest = SheetQuestion.Choice(
        "rest", "That gap with the car standing empty, to give the stops' clearances.", "LENGTH") with
    { Columns = [new("gap", "mm", "cm", "in")] };

    private static readonly Choice BothWheels = SheetQuestion.Tick("both-wheels", "The jack raised both wheels of a solid axle together.");

    /// <summary>The question as a command offers it.</summary>
    public static Question<WheelRateAsked, SheetAnswer> Question { get; } = SheetQuestion.Of<WheelRateAsked>(
        "wheel-rate",
        """
        Wheel rate in place, friction and stop clearances from a wheel raised and lowered on a jack that stands on a scale.

        Example:
          heaveline worksheet wheel-rate --up "420 mm, 218 kg" --up "400 mm, 263 kg" --up "380 mm, 310 kg" --up "360 mm, 354 kg" \
              --down "360 mm, 343 kg" --down "380 mm, 297 kg" --down "400 mm, 252 kg" --down "420 mm, 205 kg" --rest "385 mm"
        """,
        [Up, Down, Rest, BothWheels],
        Read,
        Run);

    /// <summary>Works the loop out.</summary>
    /// <param name="asked">The readings.</param>
    /// <exception cref="RefusedValueException">There are too few readings, or they are of no suspension.</exception>
    public static SheetAnswer Run(WheelRateAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var sheet = WheelRateSheet.Of(asked.Readings, asked.Rest, asked.BothWheels);
        var table = new SheetTable("Wheel rate in place")
            .Add("rate", "wheel rate between the stops", "N/mm", "F2", sheet.Rate)
            .Add("friction", "friction, half the loop", "N", "F0", sheet.Friction);
        Add(table, "bump", sheet.BumpStop);
        Add(table, "rebound", sheet.ReboundStop);
        table.Add("scatter", "scatter about the loop", "N", "F1", sheet.Scatter).Add("worst-miss", "largest miss of it", "N", "F1", sheet.WorstMiss);
        return new SheetAnswer
        {
            Sheet = Question.Word,
            Table = table.Facts,
            Notes = [.. sheet.Notes],
            From = SheetQuestion.Count(asked.Readings.Length, "reading", "readings") + " on a jack",
            Values = !sheet.IsUsable ? [] :
            [
                new("rate", SheetTable.Text(sheet.Rate, "N/mm")),
                .. sheet.HasFriction ? [new SheetValue("friction", SheetTable.Text(sheet.Friction, "N"))] : Array.Empty<SheetValue>(),
                .. Stop("bump", sheet.BumpStop), .. Stop("rebound", sheet.ReboundStop),
            ],
            CarFile = !sheet.IsUsable ? [] :
            [
                $"spring: {{wheel-rate: {SheetTable.Text(sheet.Rate, "N/mm")}}}",
                .. sheet.HasFriction ? [$"friction: {{half-width: {SheetTable.Text(sheet.Friction, "N")}}}"] : Array.Empty<string>(),
                .. Line("bump-stop", sheet.BumpStop),
                .. Line("rebound-stop", sheet.ReboundStop),
            ],
        };
    }

    private static void Add(SheetTable table, string end, FoundStop? stop)
    {
        if (stop is null)
        {
            return;
        }

        table.Add($"{end}-gap", $"gap at which the {end} stop begins", "mm", "F1", stop.Gap);
        if (stop.Clearance is { } clearance)
        {
            table.Add($"{end}-clearance", $"its clearance from rest", "mm", "F1", clearance);
        }

        table.Add($"{end}-rate", "its own rate at the wheel", "N/mm", "F1", stop.Rate);
    }

    private static IEnumerable<SheetValue> Stop(string end, FoundStop? stop) => stop is { Clearance: { } clearance }
        ? [new($"{end}-clearance", SheetTable.Text(clearance, "mm")), new($"{end}-rate", SheetTable.Text(stop.Rate, "N/mm"))]
        : [];

    private static IEnumerable<string> Line(string key, FoundStop? stop) => stop is { Clearance: { } clearance }
        ? [$"{key}: {{clearance: {SheetTable.Text(clearance, "mm")}, rate: {SheetTable.Text(stop.Rate, "N/mm")}}}"]
        : [];

    private static WheelRateAsked? Read(SheetReader reader)
    {
        var (up, down) = (reader.Rows(Up, 2).ToList(), reader.Rows(Down, 2).ToList());
        TypedCell[][] rows = [.. up, .. down];
        var gaps = reader.Readings<Length>(rows.Select(r => r[0]), UsualGap);
        var forces = reader.Forces(rows.Select(r => r[1]), UsualForce);
        var (rest, both) = (reader.Maybe<Length>(Rest, UsualGap), reader.IsTicked(BothWheels));
        return reader.IsRefused
            ? null
            : new WheelRateAsked
            {
                Typed = reader.Typed,
                Readings = [.. gaps.Zip(forces).Select((r, k) => new JackReading(r.First, r.Second, k >= up.Count))],
                Rest = rest,
                BothWheels = both,
            };
    }
}
