using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>What a wheel raised and lowered on a jack says about itself, and the cautions that go with the work.</summary>
internal static class WheelRateNotes
{
    // A loop is called wider at one end when it is so by half as much again as the interval allows.
    private const double Sure = 1.5;

    public static IEnumerable<SheetNote> Of(WheelRateSheet sheet, LoopCurve curve, double[] travel, bool hasRest, bool bothWheels) =>
        [.. sheet.IsUsable ? Stops(sheet, hasRest) : [NoLines(sheet)], .. Loop(sheet, curve, travel), .. Work(bothWheels)];

    /// <summary>A gap at rest that no reading comes near, likely a slip of the pen.</summary>
    public static IEnumerable<SheetNote> RestOutside(Amount<Length>? rest, IReadOnlyList<JackReading> readings)
    {
        var (least, most) = (readings.Min(r => r.Gap.Si), readings.Max(r => r.Gap.Si));
        return rest is { } at && (at.Si < least || at.Si > most)
            ? [new("rest-outside", FormattableString.Invariant(
                $"The gap of the car standing empty, {In.Millimetres.Of(at.Si):0.#} mm, lies outside the gaps read, ")
                + FormattableString.Invariant($"{In.Millimetres.Of(least):0.#} mm to {In.Millimetres.Of(most):0.#} mm: ")
                + "check it; the stops' clearances count from there.")]
            : [];
    }

    /// <summary>A misread reading in words.</summary>
    public static string MisreadWords(JackReading reading) => FormattableString.Invariant(
        $"The reading at {In.Millimetres.Of(reading.Gap.Si):0.##} mm {(reading.IsLowering ? "coming down" : "going up")}, {reading.Force.Si:0} N, ")
        + "misses the straight loop that all others keep: likely misread.";

    private static SheetNote NoLines(WheelRateSheet sheet) => sheet.Misread is { } reading
        ? new("misread", MisreadWords(reading) + " Read it again or leave it out; there are no lines for the car file until then.")
        : new(
            "no-lines",
            "The rate is in doubt by more than half of itself: there are no lines for the car file, and a stop would not show. "
            + "Look for a misread gap, and take more readings.");

    private static IEnumerable<SheetNote> Stops(WheelRateSheet sheet, bool hasRest)
    {
        var (bump, rebound) = (sheet.BumpStop, sheet.ReboundStop);
        if (bump is null && rebound is null)
        {
            yield return new("no-bend", "The loop shows no bend: the wheel met neither stop, or fewer than two gaps were read past it.");
        }
        else
        {
            yield return new("bends", (bump, rebound) switch
            {
                (not null, not null) => "The loop bends at both ends: both stops touch within the travel read.",
                (not null, null) => "The loop bends at its top: the bump stop touches; the rebound stop does not show.",
                _ => "The loop bends at its bottom: the rebound stop touches; the bump stop does not show.",
            });
            yield return new("soft-stop", "A soft stop touches a little before the bend of two straight lines: press it by hand to see by how much.");
        }

        if (!hasRest && (bump ?? rebound) is not null)
        {
            yield return new("rest-missing", "The gap of the car standing empty is not given: without it a bend is no clearance.");
        }

        foreach (var (stop, name) in new[] { (bump, "bump"), (rebound, "rebound") })
        {
            if (stop?.Clearance is { Si: 0.0 })
            {
                yield return new(
                    $"{name}-touches", $"The {name} stop touches in the state described already: the rate at rest is that of spring and stop.");
            }
        }
    }

    private static IEnumerable<SheetNote> Loop(WheelRateSheet sheet, LoopCurve curve, double[] travel)
    {
        const int Few = 6;
        if (travel.Length < 2 * Few)
        {
            yield return new("few-readings", "With fewer than six readings each way a stop can hide: take more, closer together towards both ends.");
        }

        if (sheet.Friction.Si <= sheet.Friction.Doubt.HalfWidth)
        {
            yield return new("no-loop", "The loop is lost in the scatter: the friction is smaller than its doubt.");
        }

        if (sheet.IsUsable && !sheet.HasFriction)
        {
            yield return new("no-friction-line", "The friction is in doubt by more than half of itself: the car file gets no line of it.");
        }

        var (perTravel, halfWidth) = curve.Widening();
        if (halfWidth > 0.0 && Math.Abs(perTravel) > Sure * halfWidth)
        {
            var (low, high) = (travel.Min() - travel.Average(), travel.Max() - travel.Average());
            var (least, most) = (sheet.Friction.Si + (perTravel * low), sheet.Friction.Si + (perTravel * high));
            yield return new(
                "loop-widens",
                FormattableString.Invariant($"The loop is not equally wide: half of it is {least:F0} N at the lowest load read and {most:F0} N at ")
                + "the highest; the line for the car file is the mean.");
        }
    }

    private static IEnumerable<SheetNote> Work(bool bothWheels)
    {
        yield return new(
            "springs-store-energy",
            "A spring pressed together stores enough to kill, and a car on a jack falls: stands close under the body at every step, other wheels "
            + "chocked, jack square under the wheel or its hub, nobody under the car, hands out of the gap.");
        yield return new(
            "ballast",
            "Past its standing load the body rises unless weight holds it down: sandbags over that wheel, tied. "
            + "Stop when another wheel leaves the ground.");
        yield return new(
            "at-the-wheel",
            "The jack must push at the wheel or its hub: under an arm the force is another. Take the weight of jack and plate off the readings. "
            + "Let the scale come to rest at each stop, and after turning move on past the loop's height before the first reading.");
        yield return bothWheels
            ? new("both-wheels", "Both wheels were raised together: half of each reading is one wheel's, and a bar does nothing.")
            : new(
                "one-wheel",
                "With one wheel raised an anti-roll bar pushes too: unhook it. On a solid axle raise both wheels together (--both-wheels): "
                + "one alone turns the axle.");
    }
}
