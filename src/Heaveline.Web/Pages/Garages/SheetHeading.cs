using Heaveline.Files.Cars;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Web.Pages.Garages;

/// <summary>What a sheet says at its top.</summary>
/// <param name="Headline">How much is measured and estimated, and what the car comes to.</param>
/// <param name="Next">What to do next.</param>
internal sealed record SheetHeading(string Headline, string Next)
{
    /// <summary>The top of a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="reading">What its file says.</param>
    /// <param name="finding">What its car comes to; null where there is none.</param>
    /// <param name="estimated">How many numbers of the page are estimated.</param>
    public static SheetHeading Of(GarageSheet sheet, SheetReading reading, SheetFinding? finding, int estimated)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.IsRefused)
        {
            return new("Put right what is refused", "Each refusal stands at its number; the rest follows.");
        }

        if (finding is null)
        {
            return new(
                "A new car from one page",
                "Measure what you can, in any unit. What you leave out is estimated, marked in the car's file, and told here with what it "
                    + "costs; only the wheelbase and what the scales read are never guessed.");
        }

        var (ratio, band) = (finding.Ratio, finding.Ratio.Central90);
        return new(
            Text($"{sheet.Measured} measured, {estimated} estimated: rear over front comes to {ratio.Stated:F2} ({finding.Load}), ")
                + Text($"between {band.Low:F2} and {band.High:F2}."),
            string.Join(' ', Sentences(reading, finding, estimated)));
    }

    /// <summary>What is missing, in words; null where nothing is.</summary>
    public static string? Missing(GarageSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        string[] words = [.. GarageSheet.Lines.Where(line => sheet.Missing.Contains(line.Key)).Select(line => $"“{line.Words}”")];
        return words.Length == 0 ? null
            : $"Still missing: {string.Join(", ", words)}. Without {(words.Length == 1 ? "it" : "them")} there is no car to save.";
    }

    private static IEnumerable<string> Sentences(SheetReading reading, SheetFinding finding, int estimated)
    {
        foreach (var (load, ends) in finding.OnStops)
        {
            yield return $"{FirstLetter.Raised(load)} {ends} on the bump stops: the ratio is that of the stops there.";
        }

        yield return "Ride frequencies; nine times out of ten the ratio lies between the two.";
        if (finding.Next is var (number, words, share))
        {
            var what = number > 0 ? Text($"Measure number {number} next, {FirstLetter.Lowered(words)}")
                : $"Measure the {words} next, in the full form";
            yield return Text($"{what}: it makes {100.0 * share:F0} % of the variance of that ratio; without its doubt the band would be ")
                + Text($"{100.0 * Math.Sqrt(Math.Max(0.0, 1.0 - share)):F0} % as wide.");
        }

        if (reading.Estimated > 0)
        {
            var marked = reading.Estimated == 1 ? "value is" : "values are";
            yield return Text($"In the file {reading.Estimated} {marked} marked as estimated: it holds a number of both axles twice, and what is ")
                + "usual of seats and stops.";
        }

        yield return "What was typed without ± counts as exact.";
    }
}
