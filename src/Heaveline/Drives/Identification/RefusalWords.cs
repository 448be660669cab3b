using System.Globalization;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives.Identification;

/// <summary>Refusals in words.</summary>
internal static class RefusalWords
{
    // Passes over one hump that are no longer few, and how far apart their speeds then lie.
    private const int Enough = 6;
    private const double Apart = 1.2;

    /// <summary>A number's name inside a sentence.</summary>
    public static string Name(CarNumber number) => number switch
    {
        CarNumber.FrontFrequency => "the front frequency",
        CarNumber.RearFrequency => "the rear frequency",
        CarNumber.FrequencyRatio => "the frequency ratio",
        CarNumber.FrontDamping => "the front damping",
        CarNumber.RearDamping => "the rear damping",
        CarNumber.PitchIndex => "the dynamic index",
        CarNumber.FirstModeFrequency => "the frequency of the slower body mode",
        CarNumber.FirstModeDamping => "the damping of the slower body mode",
        CarNumber.SecondModeFrequency => "the frequency of the faster body mode",
        CarNumber.SecondModeDamping => "the damping of the faster body mode",
        CarNumber.FrontHop => "the front wheel hop",
        _ => "the rear wheel hop",
    };

    /// <summary>With a capital.</summary>
    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>No wheelbase.</summary>
    public static CarRefusal NoWheelbase { get; } = new(
        RefusalKind.Wheelbase,
        "Give the wheelbase (tape, ± 1 cm): the delay between the axles is the drive's ruler.",
        "");

    /// <summary>No pitch rate.</summary>
    public static CarRefusal NoGyro { get; } = new(
        RefusalKind.NoGyro,
        "Without a turn rate front and rear are not told apart: events and heave only, no pitch and no car.",
        "The same drive with a phone that has a gyro would tell.");

    /// <summary>Nothing to read.</summary>
    public static CarRefusal Nothing { get; } = new(
        RefusalKind.TooFew,
        "No bump and no stretch of rough road of this drive can be read.",
        "Six passes over one hump, two at each of three speeds up to 30 km/h, would tell.");

    /// <summary>Too few crossings.</summary>
    public static CarRefusal TooFew(int events, int rough, string tells)
    {
        var held = events > 0
            ? Text($"{Count(events)} bump{(events == 1 ? "" : "s")} with no other near {(events == 1 ? "it" : "them")} (1.5 s before to 4 s after) ")
                + Text($"{(events == 1 ? "is" : "are")} too few: {Count(CarJudgement.FewestEvents)} are the least.")
            : Text($"{Count(rough)} stretch{(rough == 1 ? "" : "es")} of 5 s of rough road and no bump that stands alone are too few: ")
                + Text($"{CarJudgement.FewestRough} stretches, or {Count(CarJudgement.FewestEvents)} bumps, are the least.");
        var more = events > 0 ? Text($"{Math.Max(CarJudgement.FewestEvents - events, 3)} times more") : "six times";
        return new CarRefusal(
            RefusalKind.TooFew, Capital(held), $"Drive one hump {more}, 30 km/h at most, nothing else within 5 s. {tells}".TrimEnd());
    }

    /// <summary>The drive says little of a number.</summary>
    public static CarRefusal NotLearned(CarNumber number, double learned, string tells) => new(
        RefusalKind.NotLearned,
        Text($"This drive says little of {Name(number)}: it narrowed what was thought before by {100.0 * learned:F0} %."),
        tells);

    /// <summary>Another car is as likely.</summary>
    public static CarRefusal TwoAnswers(CarStart one, CarStart other, string tells) => new(
        RefusalKind.TwoAnswers,
        Text($"Two different cars explain this drive equally well: {one.FrontFrequency:F2} and {one.RearFrequency:F2} Hz, damping ")
        + Text($"{one.FrontDamping:F2} and {one.RearDamping:F2}; or {other.FrontFrequency:F2} and {other.RearFrequency:F2} Hz, damping ")
        + Text($"{other.FrontDamping:F2} and {other.RearDamping:F2}."),
        tells);

    /// <summary>The halves disagree.</summary>
    public static CarRefusal Halves(CarNumber number, double apart, string tells) => new(
        RefusalKind.Halves,
        Text($"The two halves of the drive tell different cars: {Name(number)} is {apart:F1} standard errors apart. ")
        + "Did load, pressure or line change?",
        tells);

    /// <summary>The model does not move like the log, or chance is not spread in it as in the log.</summary>
    /// <param name="band">The band that lies farthest outside.</param>
    /// <param name="isPitch">Whether it is that of the pitch rate.</param>
    /// <param name="all">All bands.</param>
    /// <param name="windows">What was driven.</param>
    public static CarRefusal Misfit(ResidualBand band, bool isPitch, IEnumerable<ResidualBand> all, IReadOnlyList<DriveWindow> windows) => new(
        RefusalKind.Misfit,
        (isPitch ? band.Pitch : band.Vertical) < 1.0
            ? Quiet(band, isPitch, all)
            : Text($"The car of the model does not move like this log between {band.From:G2} and {band.To:G2} Hz: of the {Channel(isPitch)} ")
                + Text($"{(isPitch ? band.Pitch : band.Vertical):G2} times the power is left that chance would leave ")
                + "(mount, seat, engine, another wheelbase?).",
        Lower(windows) ?? "The phone flat on the floor, taped down, over one hump twice at each of three speeds up to 30 km/h would tell.");

    private static string Channel(bool isPitch) => isPitch ? "pitch rate" : "vertical acceleration";

    // Less than chance is no fault of the car's motion in that band: the fit holds more for chance than there is.
    private static string Quiet(ResidualBand band, bool isPitch, IEnumerable<ResidualBand> all)
    {
        var (at, ofPitch, most) = all.SelectMany(b => new[] { (b, false, b.Vertical), (b, true, b.Pitch) }).MaxBy(b => b.Item3);
        return Text($"No interval can be built on this drive: the {Channel(isPitch)} between {band.From:G2} and {band.To:G2} Hz keeps only ")
            + Text($"{(isPitch ? band.Pitch : band.Vertical):G2} times the power that the fit holds for chance. ")
            + (most > 1.2
                ? Text($"Elsewhere the car of the model follows worse: of the {Channel(ofPitch)} between {at.From:G2} ")
                    + Text($"and {at.To:G2} Hz {most:G2} times that power is left (stops, friction, dampers that bend?).")
                : "Chance in this log is not that of the model (vibration folded down, a filter in the phone, few bumps?).");
    }

    // Who drove one hump at three speeds is not sent to do it again.
    private static string? Lower(IReadOnlyList<DriveWindow> windows)
    {
        double[] speeds = [.. windows.Where(w => w.Site is not null).Select(w => w.Speed)];
        if (!windows.Where(w => w.Site is not null).GroupBy(w => w.Site).Any(IsDriven))
        {
            return null;
        }

        var (slow, fast) = (In.KilometresPerHour.Of(speeds.Min()), In.KilometresPerHour.Of(speeds.Max()));
        return Text($"More passes like the {speeds.Length} of this drive, at {slow:F0} km/h to {fast:F0} km/h, would not tell. A lower hump may")
            + (slow > TellingDrive.Slowest
                ? Text($", or the same below {slow:F0} km/h if every wheel stays off its stops there ('heaveline plan' says).")
                : ".");

        static bool IsDriven(IGrouping<string?, DriveWindow> site) =>
            site.Count() >= Enough && site.Max(w => w.Speed) >= Apart * site.Min(w => w.Speed);
    }

    /// <summary>A value of no road car.</summary>
    public static CarRefusal Edge(CarNumber number, double value, double low, double high) => new(
        RefusalKind.Edge,
        Text($"{Capital(Name(number))} comes out as {value:G3}, outside {low:G3} to {high:G3}: no road car's, and not believed."),
        "");

    /// <summary>A phone that swings.</summary>
    public static CarRefusal SoftMount(string sign) => new(
        RefusalKind.SoftMount,
        $"The phone swings on its holder, the car reaches its stops, or wheelbase, place or speed are not as said: {sign}. "
        + "Any of them shifts frequencies, damping and index, and no interval holds.",
        "Measure wheelbase and place again; lay the phone flat on the floor, taped; drive lower humps or slower. "
        + "Before and after with the same mount can still be compared.");

    /// <summary>Turned round.</summary>
    public static CarRefusal Reversed(string sign) => new(
        RefusalKind.Reversed,
        $"The car seems to have been driven backwards, or forward is turned round: {sign}, and no other fault is left then.",
        "Brake firmly once and take two turns, driving forwards.");

    /// <summary>Turned round, or the wheelbase is another.</summary>
    public static CarRefusal Wheelbase(string sign, string other) => new(
        RefusalKind.Reversed,
        $"Wheelbase, place or speed are not as said, or forward is turned round: {sign}, and a {other} wheelbase explains the drive too.",
        "Measure wheelbase and place again; brake firmly once and take two turns, driving forwards.");

    /// <summary>Too few windows to be halved.</summary>
    public static string HalfTooFew(int windows) => Text(
        $"Gentle and hard bumps are not told apart: half of {windows} is too few, {Count(CarJudgement.FewestEvents)} in each half are the least.");

    /// <summary>Both halves move alike.</summary>
    public static string HalvesAlike(double gentle, double hard) =>
        Text($"Gentle and hard bumps are not told apart: all moved the dampers alike (about {gentle:G2} and {hard:G2} m/s RMS). ")
        + "The same hump at half the speed would tell, or a low one and a higher one over which every wheel stays off its stops.";

    /// <summary>A half that tells no car by itself.</summary>
    public static string HalfUntold(string which) =>
        $"Gentle and hard bumps are not told apart: the {which} half tells no car by itself. More passes of that kind would tell.";

    /// <summary>Halves of which each tells a car, but none of its numbers together with the other.</summary>
    public static string HalvesApart =>
        "Gentle and hard bumps are not told apart: each half tells a car, but they say no number in common. More passes of either kind would tell.";

    /// <summary>Why a single value is not said.</summary>
    public static string Grey => "The drive as a whole is not believed.";

    private static string Count(int count) => count switch
    {
        1 => "one",
        2 => "two",
        3 => "three",
        4 => "four",
        _ => count.ToString(CultureInfo.InvariantCulture),
    };
}
