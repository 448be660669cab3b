using Heaveline.Files.Cars;
using Heaveline.Files;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Cars;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.WebUtilities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Web.Pages;

/// <summary>
/// A new car from one page of numbers: what is measured, what is estimated in its place, what each estimate costs, and the way to the pass.
/// </summary>
public sealed partial class SheetPage
{
    private const string Named = "name";

    // Per cent of a variance below which a number is left in peace.
    private const double Little = 0.5;

    private static readonly (string Heading, string[] Keys)[] Groups =
    [
        ("Where it stands", [GarageSheet.Wheelbase, GarageSheet.FrontMass, GarageSheet.RearMass, "track"]),
        ("Springs", ["front-spring", "rear-spring", GarageSheet.FrontMoves, GarageSheet.RearMoves]),
        ("Gaps and dampers", ["front-gap", "rear-gap", "damping"]),
        ("What is hard to weigh", ["unsprung", "tyre", "height", "index"]),
    ];

    private readonly Dictionary<string, string> typed = new(StringComparer.Ordinal);
    private HashSet<string> estimated = [];
    private GarageSheet sheet = null!;
    private SheetFinding? finding;
    private string name = "";
    private string problem = "";

    [Inject]
    private GarageView Garage { get; set; } = null!;

    [Inject]
    private NavigationManager Addresses { get; set; } = null!;

    private string Title => name.Trim().Length > 0 ? name.Trim() : "My car";

    private string Headline => finding is null
        ? "A new car from one page"
        : Text($"{sheet.Measured} measured, {estimated.Count} estimated: rear over front comes to {finding.Ratio.Stated:F2}")
            + Text($", between {finding.Ratio.Central95.Low:F2} and {finding.Ratio.Central95.High:F2}.");

    private string Next
    {
        get
        {
            if (finding is null)
            {
                return sheet.Refusals.Count > 0 ? "Put right what is refused; the rest follows."
                    : "Measure what you can, in any unit. What you leave out is estimated, marked in the car's file, and told here with what it "
                        + "costs; only the wheelbase and what the scales read are never guessed.";
            }

            if (finding.Next is not var (line, share))
            {
                return $"Told for {finding.Load}.";
            }

            var n = GarageSheet.Lines.Index().First(one => one.Item.Key == line.Key).Index + 1;
            return Text(
                $"Ride frequencies, {finding.Load}, two standard deviations. Measure number {n} next, {FirstLetter.Lowered(line.Words)}: it makes ")
                + Text($"{100.0 * share:F0} % of the variance of that ratio; without its doubt the band would be ")
                + Text($"{100.0 * Math.Sqrt(Math.Max(0.0, 1.0 - share)):F0} % as wide. What was typed without ± counts as exact.");
        }
    }

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        var said = QueryHelpers.ParseQuery(new Uri(Addresses.Uri).Query);
        name = said.GetValueOrDefault(Named).ToString();
        foreach (var line in GarageSheet.Lines)
        {
            if (said.GetValueOrDefault(line.Key).ToString() is { Length: > 0 } words)
            {
                typed[line.Key] = words;
            }
        }

        Look();
    }

    private void Rename(string words)
    {
        name = words;
        Keep();
    }

    private void Type(SheetLine line, string words)
    {
        var whole = QuantityText.Whole(words, new QuantityEntry(line.Field, Garage.Units).Usual);
        if (whole.Length == 0)
        {
            typed.Remove(line.Key);
        }
        else
        {
            typed[line.Key] = whole;
        }

        Keep();
    }

    // What is typed stands in the address, so that a page loaded again has it.
    private void Keep()
    {
        problem = "";
        Look();
        Addresses.NavigateTo(
            "sheet" + PageAddress.Query(
                [(Named, name.Length > 0 ? name : null), .. GarageSheet.Lines.Select(line => (line.Key, typed.GetValueOrDefault(line.Key)))]),
            replace: true);
    }

    private void Look()
    {
        sheet = GarageSheet.Of(Title, typed, Garage.Units);
        estimated = [.. sheet.Estimates.Keys.Where(key => !typed.ContainsKey(key) && !IsIdle(key))];
        finding = null;
        if (sheet.Text is null)
        {
            return;
        }

        var reading = CarFile.Read(new SourceText("sheet.yaml", sheet.Text));
        if (reading.Value is not { } car)
        {
            var units = Garage.Units.Leaving(typed.Values);
            problem = string.Join(' ', reading.Refusals.Select(refusal => units.Text($"{refusal.Message} {refusal.Advice}")));
            return;
        }

        try
        {
            finding = SheetFinding.Of(car);
        }
        catch (NoAnswerException e)
        {
            problem = Garage.Units.Text($"The numbers cannot be computed: {e.Message}");
        }
    }

    // A spring that is estimated is estimated at the wheel: how far it moves is not asked.
    private bool IsIdle(string key) => (key == GarageSheet.FrontMoves && !typed.ContainsKey("front-spring"))
        || (key == GarageSheet.RearMoves && !typed.ContainsKey("rear-spring"));

    // What the estimate costs; nothing is said of a share that rounds to none.
    private string Cost(SheetLine line)
    {
        if (finding is null)
        {
            return "";
        }

        var (ratio, damping) = (100.0 * SheetFinding.ShareOf(finding.Ratio, line), 100.0 * SheetFinding.ShareOf(finding.Damping, line));
        return (ratio >= Little, damping >= Little) switch
        {
            (true, true) => Text($" It makes {ratio:F0} % of the variance of rear over front, {damping:F0} % of that of the rear damping ratio."),
            (true, false) => Text($" It makes {ratio:F0} % of the variance of rear over front."),
            (false, true) => Text($" It makes {damping:F0} % of the variance of the rear damping ratio."),
            _ => " It hardly moves the frequencies or the damping.",
        };
    }

    private void Save(Func<string, string> next)
    {
        var file = FileName.Of(Title, "");
        if (sheet.Text is not { } text || file.Length == 0)
        {
            problem = FileName.Nameless;
            return;
        }

        var saved = Garage.Garage.Save(file, text, null);
        problem = FileName.Problem(saved, file);
        if (problem.Length == 0)
        {
            Addresses.NavigateTo(next(GarageView.NameOf(file)));
        }
    }
}
