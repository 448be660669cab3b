using Heaveline.Cars;

namespace Heaveline.Measures;

/// <summary>
/// The range of the dipped beam's drop under the rule that the car file chooses. No law is built in: rules differ by place, by year and by kind of
/// vehicle, and each says how it was come by. Check locally.
/// </summary>
/// <param name="Source">Where it is printed.</param>
/// <param name="LeastDrop">Least drop (–).</param>
/// <param name="GreatestDrop">Greatest drop (–).</param>
/// <param name="Known">How it is known.</param>
public sealed record HeadlampRange(string Source, double LeastDrop, double GreatestDrop, string Known)
{
    /// <summary>What stands beside every use of it.</summary>
    public const string Caution = "A range as printed, not law: check what holds where the vehicle is used.";

    // Limits of UN Regulation 48, 09 series: heights of the lamp, m.
    private const double Lowest = 0.5;
    private const double Middle = 0.9;
    private const double Highest = 1.2;

    /// <summary>The range for a lamp; null where none is chosen, or its rule has none for a lamp as high as this.</summary>
    /// <param name="lamp">The lamp: its height in the reference state decides.</param>
    public static HeadlampRange? Of(Headlamp lamp)
    {
        ArgumentNullException.ThrowIfNull(lamp);
        return lamp switch
        {
            { LeastDrop: { } least, GreatestDrop: { } greatest } => new("the car file", least.Si, greatest.Si, "as given there"),
            { Rule: { } rule } => Of(rule, lamp.Height.Si),
            _ => null,
        };
    }

    /// <summary>A rule's range for a lamp of a height; null where it has none.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="height">Height of the lamp above the ground, m.</param>
    public static HeadlampRange? Of(HeadlampRule rule, double height) => rule switch
    {
        HeadlampRule.UnRegulation48Series09 when height is >= Lowest and <= Highest => Series09(height),
        HeadlampRule.UnRegulation48Series08 => Series08(height),
        HeadlampRule.BritishInspection => height <= 0.85
            ? new("British inspection", 0.005, 0.0275, "DVSA, The MOT headlamp aim test is changing, 2016")
            : new("British inspection", 0.0125, 0.0275, "after a beam tester's manual; today's inspection manual not seen"),
        HeadlampRule.GermanInspection => new(
            "German inspection", 0.007, 0.017, "12 cm ± 5 cm at 10 m, after an owners' page for cars; rows of the rule differ by kind of vehicle"),
        _ => null,
    };

    /// <summary>Whether a drop lies inside.</summary>
    public bool Holds(double drop) => drop >= LeastDrop && drop <= GreatestDrop;

    // The limits are straight in the height, and even at 0.9 m; the height meant is that of the apparent surface's lower edge, unladen.
    private static HeadlampRange Series09(double height)
    {
        var (least, greatest) = height <= Middle ? (0.5, height + 1.2) : ((2.17 * height) - 1.45, (2.17 * height) + 0.15);
        return new(
            "UN Regulation No. 48, 09 series of amendments, 6.2.6.1.2 (ECE/TRANS/WP.29/2024/28)",
            0.01 * least,
            0.01 * greatest,
            "after a public transcription; the height of the lens stands for that of its lower edge");
    }

    private static HeadlampRange Series08(double height)
    {
        const string source = "UN Regulation No. 48 up to the 08 series, 6.2.6.1.2";
        return height switch
        {
            < 0.8 => new(source, 0.005, 0.025, "read in a bilingual extract of the EU text"),
            <= 1.0 => new(source, 0.005, 0.025, "as usually quoted, its text not found; 1 to 3 % where the maker chose so"),
            _ => new(source, 0.010, 0.030, "as usually quoted, its text not found"),
        };
    }
}
