using System.Globalization;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>One measure, of a crossing or of the car at rest, before and after a change.</summary>
/// <param name="Measure">What it is.</param>
/// <param name="Before">The former state's, as shown; null when there is none or it was not recorded to its end.</param>
/// <param name="After">Now, as shown.</param>
internal sealed record MeasureChange(Measure Measure, double? Before, double? After)
{
    /// <summary>A change below this share of the value nobody would feel (–). Judged by eye, no source.</summary>
    public const double Felt = 0.03;

    // Changes below this share of the value are no change to speak of (common practice, no source).
    private const double Hardly = 0.005;

    /// <summary>Whether it is no change to speak of: none in print, or none with a digit more.</summary>
    public bool IsHardlyAny => Before is { } before && After is { } after
        && (Print(before) == Print(after) || Math.Abs(after - before) <= Math.Max(Hardly * Math.Abs(before), 0.05 * LastDigit));

    /// <summary>Whether it is for the better; null where neither way is, where it is no change to speak of, and without a former state.</summary>
    public bool? IsBetter => Before is { } before && After is { } after && !IsHardlyAny && Measure.Better != Better.Neither
        ? after > before == (Measure.Better == Better.More)
        : null;

    /// <summary>The change in words, its verdict first; empty without a former state.</summary>
    public string Words => IsBetter switch
    {
        true => $"better: {Size}",
        false => $"worse: {Size}",
        null => Size,
    };

    /// <summary>The change in words without a verdict; empty without a former state.</summary>
    public string Size
    {
        get
        {
            if (Before is not { } before || After is not { } after)
            {
                return "";
            }

            if (IsHardlyAny)
            {
                return "as before";
            }

            // A share of a share would only puzzle, and so would one of a length that may be negative.
            var difference = after - before;
            var print = Difference(before, after);
            var size = Measure.Unit.Si.Length == 0 && Measure.Unit != In.Plain ? $"{print} {(print == "1" ? "point" : "points")}"
                : Measure.Unit == In.Millimetres || before <= 0.0 ? print + Suffix
                : $"{Numeral.Of(In.Percent.Of(Math.Abs(difference) / before), 0)}\u00a0%";
            return $"{size} {(difference > 0.0 ? "more" : "less")}";
        }
    }

    /// <summary>How large it is over the value before (–); 0 without a former state.</summary>
    public double Share => Before is { } before && After is { } after
        ? Math.Abs(after - before) / Math.Max(Math.Abs(before), double.Epsilon)
        : 0.0;

    /// <summary>Whether anybody would feel it.</summary>
    public bool IsFelt => !IsHardlyAny && Share >= Felt;

    /// <summary>Those of some changes that are felt and for the better, or for the worse, the largest first, in words; null for none.</summary>
    /// <param name="changes">The changes.</param>
    /// <param name="better">Whether what is better is told.</param>
    /// <param name="named">How many are named.</param>
    /// <param name="always">What is named whatever its place; null: nothing.</param>
    /// <param name="where">Where the others stand, after a blank (" below"); blank for nowhere in particular.</param>
    public static string? Told(IEnumerable<MeasureChange> changes, bool better, int named, string where = "", Func<Measure, bool>? always = null)
    {
        var told = changes.Where(change => change.IsFelt && change.IsBetter == better).OrderByDescending(change => change.Share).ToArray();
        MeasureChange[] shown = [.. told.Take(named), .. told.Skip(named).Where(change => always?.Invoke(change.Measure) == true)];
        var more = told.Length - shown.Length;
        return told.Length == 0
            ? null
            : string.Join("; ", shown.Select(change => $"{change.Measure.Label} {change.Size}"))
                + (more > 0 ? $"; {more} more{where}" : "");
    }

    /// <summary>The measures that the page sets side by side: those of a crossing that was recorded to its end.</summary>
    public static IReadOnlyList<MeasureChange> Of(PassAnswer now, PassAnswer? former)
    {
        ArgumentNullException.ThrowIfNull(now);
        double? Shown(PassAnswer? crossing, Measure<Pass> measure) => crossing is { IsWhole: true } whole ? measure.ShownOf(whole.Pass) : null;
        return
        [
            .. PassCatalogue.For(now.Model, now.Pass.Road, MeasureUse.BeforeAfter)
                .Select(measure => new MeasureChange(measure, Shown(former, measure), Shown(now, measure)))
                .Where(change => change.Before is not null || change.After is not null)
                .Where(change => !change.Measure.IsNothing([change.Before ?? 0.0, change.After ?? 0.0])),
        ];
    }

    /// <summary>A value in print.</summary>
    public string Print(double? value) => value is { } v ? Measure.Print(v) : "not recorded";

    /// <summary>A value with its unit.</summary>
    public string PrintWithUnit(double? value) => Print(value) + (value is null ? "" : Suffix);

    private double LastDigit => Math.Pow(10.0, -Measure.Digits);

    private string Suffix => Measure.Unit.Suffix.Replace(' ', '\u00a0');

    // As readers would take one printed number from the other, or with a digit more where that is another number.
    private string Difference(double before, double after)
    {
        var difference = Math.Abs(after - before);
        var format = "F" + Measure.Digits.ToString(CultureInfo.InvariantCulture);
        double AsPrinted(double value) => double.Parse(value.ToString(format, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Math.Abs(AsPrinted(difference) - Math.Abs(AsPrinted(after) - AsPrinted(before))) < 0.5 * LastDigit
            ? Print(difference)
            : Numeral.Of(difference, Measure.Digits + 1);
    }
}
