using System.Globalization;
using Heaveline.Answers;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>The gentler and the harder half of a drive in words and in a table.</summary>
internal static class MotionHalvesWords
{
    private const string Id = "car-halves-by-motion";

    /// <summary>What is said of them.</summary>
    /// <param name="halves">The halves.</param>
    /// <param name="what">What they are halves of: bumps, stretches.</param>
    public static IEnumerable<Sentence> Of(MotionHalves halves, string what)
    {
        if (halves is not { WhyNot: "", Gentle: { } gentle, Hard: { } hard })
        {
            yield return new Sentence(Id, halves.WhyNot);
            yield break;
        }

        // As many decimals of pitch as tell the halves apart.
        var pitch = Degrees(gentle, "F1") == Degrees(hard, "F1") ? "F2" : "F1";
        HalfDifference[] told = [.. halves.Differences.Where(d => d.IsBeyondChance)];
        if (told.Length == 0)
        {
            var most = halves.Differences.MaxBy(d => Math.Abs(Math.Log(d.Ratio)))!;
            yield return new Sentence(
                Id, Text($"The {gentle.Windows} gentler {what} ({Motion(gentle, pitch)}) and ")
                + Text($"the {hard.Windows} harder ({Motion(hard, pitch)}) tell cars that differ by no more than chance ")
                + Text($"makes among six numbers: most in {DriveCarTable.Of(most.Number).Name}, {By(most)}. ")
                + "Whether friction or stops are in it these halves do not tell.");
            yield break;
        }

        foreach (var difference in told)
        {
            var name = DriveCarTable.Of(difference.Number).Name;
            yield return new Sentence($"{Id}-{DriveCarTable.Of(difference.Number).Key}", Text($"Over the {gentle.Windows} gentler {what} ")
                + Text($"({Motion(gentle, pitch)}) {name}: {Shown(gentle.Of(difference.Number))}; ")
                + Text($"over the {hard.Windows} harder ({Motion(hard, pitch)}) {Shown(hard.Of(difference.Number))}, ")
                + $"{By(difference)}: {Why(difference)}.");
        }
    }

    /// <summary>Both halves side by side; no rows where they do not tell.</summary>
    /// <param name="halves">The halves.</param>
    public static FactTable Table(MotionHalves halves)
    {
        var table = new FactTable("Gentler and harder half apart (90 %)", ["gentler", "from", "to", "harder", "from", "to"]);
        if (halves is { WhyNot: "", Gentle: { } gentle, Hard: { } hard })
        {
            foreach (var difference in halves.Differences)
            {
                var (one, other) = (gentle.Of(difference.Number), hard.Of(difference.Number));
                table.Add(DriveCarTable.Of(difference.Number), [one.Value, one.Low, one.High, other.Value, other.Low, other.High]);
            }
        }

        return table;
    }

    private static string Motion(MotionHalf half, string format) =>
        Text($"damper speeds about {half.TravelSpeed:G2} m/s, pitch {Degrees(half, format)}° RMS");

    private static string Degrees(MotionHalf half, string format) => In.Degrees.Of(half.PitchMotion).ToString(format, CultureInfo.InvariantCulture);

    private static string Shown(CarEstimate estimate)
    {
        var measure = DriveCarTable.Of(estimate.Number);
        var unit = measure.Unit.Symbol is { Length: > 1 } symbol ? $" {symbol}" : "";
        return Text($"{measure.Print(measure.Unit.Of(estimate.Value))}{unit} ± {50.0 * (estimate.High - estimate.Low) / estimate.Value:F0} %");
    }

    private static string By(HalfDifference difference) =>
        Text($"{100.0 * Math.Abs(difference.Ratio - 1.0):F0} % {(difference.Ratio < 1.0 ? "less" : "more")} when hard ")
        + Text($"(90 %: {Signed(difference.Low)} to {Signed(difference.High)} %)");

    private static string Signed(double ratio) => Text($"{100.0 * (ratio - 1.0):+0;−0;0}");

    private static string Why(HalfDifference difference) => (difference.Number, difference.Ratio < 1.0) switch
    {
        (CarNumber.FrontDamping or CarNumber.RearDamping, true) => "friction, or dampers that grow softer with speed",
        (CarNumber.FrontDamping or CarNumber.RearDamping, false) => "dampers that grow stiffer with speed, or stops that are reached",
        (CarNumber.FrontFrequency or CarNumber.RearFrequency, true) => "friction",
        (CarNumber.FrontFrequency or CarNumber.RearFrequency, false) => "a progressive spring, or a stop that is reached",
        (CarNumber.FrequencyRatio, _) => "the ends do not stiffen alike",
        _ => "it should not change with the motion: doubt the drive",
    };
}
