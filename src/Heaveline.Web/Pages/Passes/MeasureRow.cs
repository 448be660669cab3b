namespace Heaveline.Web.Pages.Passes;

/// <summary>One measure of the crossing, before and after.</summary>
/// <param name="Key">Its name for programs.</param>
/// <param name="Group">Which part of the crossing it is of: "hit", "settling", "whole crossing", "price".</param>
/// <param name="Label">Its name for a reader.</param>
/// <param name="Unit">Unit of both values.</param>
/// <param name="Format">How a value is printed.</param>
/// <param name="Before">The former state's; null when there is none or it was not recorded to its end.</param>
/// <param name="After">Now.</param>
/// <param name="Wanted">−1: less is better, +1: more is better, 0: neither.</param>
internal sealed record MeasureRow(string Key, string Group, string Label, string Unit, string Format, double? Before, double? After, int Wanted)
{
    // Changes below this share of the value are no change to speak of (common practice, no source).
    private const double Hardly = 0.005;

    /// <summary>A value in print.</summary>
    public string Print(double? value) => value is { } v ? v.ToString(Format, System.Globalization.CultureInfo.InvariantCulture).Replace('-', '−') : "not recorded";

    /// <summary>A value with its unit.</summary>
    public string PrintWithUnit(double? value) => value is null ? Print(value) : Unit == "°" ? Print(value) + "°" : $"{Print(value)}\u00a0{Unit}";

    /// <summary>The change in words; empty without a former state.</summary>
    public string Change
    {
        get
        {
            if (Before is not { } before || After is not { } after)
            {
                return "";
            }

            var difference = after - before;
            if (Print(before) == Print(after) || Math.Abs(difference) <= Hardly * Math.Abs(before))
            {
                return "as before";
            }

            // A share of a share would only puzzle, and so would one of a length that may be negative.
            var size = Unit.StartsWith('%') ? $"{Print(Math.Abs(difference))} {(Print(Math.Abs(difference)) == "1" ? "point" : "points")}"
                : Unit == "mm" || before <= 0.0 ? PrintWithUnit(Math.Abs(difference))
                : $"{(100.0 * Math.Abs(difference) / before).ToString("F0", System.Globalization.CultureInfo.InvariantCulture)}\u00a0%";
            return (Wanted * difference) switch
            {
                > 0.0 => $"better: {size} {(difference > 0.0 ? "more" : "less")}",
                < 0.0 => $"worse: {size} {(difference > 0.0 ? "more" : "less")}",
                _ => $"{size} {(difference > 0.0 ? "more" : "less")}",
            };
        }
    }
}
