using Heaveline.Files.Cars;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Cars;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Pages.Worksheets;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.WebUtilities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Web.Pages;

/// <summary>
/// A new car from one page of numbers: what is measured, what is estimated in its place, what each estimate costs, and the way to the pass.
/// </summary>
public sealed partial class SheetPage
{
    private static readonly (string Heading, string[] Keys)[] Groups =
    [
        ("Where it stands", [GarageSheet.Wheelbase, GarageSheet.FrontMass, GarageSheet.RearMass, "track"]),
        ("Springs", ["front-spring", "rear-spring", GarageSheet.FrontMoves, GarageSheet.RearMoves]),
        ("Gaps and dampers", ["front-gap", "rear-gap", "damping"]),
        ("What is hard to weigh", ["unsprung", "tyre", "height", "index"]),
    ];

    /// <summary>Behind a number's key, the address key of what it was worked out from.</summary>
    internal const string ReadingsKey = "-from";

    private readonly Dictionary<string, string> typed = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> readings = new(StringComparer.Ordinal);
    private HashSet<string> estimated = [];
    private GarageSheet sheet = null!;
    private SheetReading reading = null!;
    private SheetFinding? finding;
    private string name = "";
    private string problem = "";

    [Inject]
    private GarageView Garage { get; set; } = null!;

    [Inject]
    private NavigationManager Addresses { get; set; } = null!;

    /// <summary>What is in hand: the new car drives over the same road at the same speed.</summary>
    [CascadingParameter]
    private CurrentCar InHand { get; set; } = new();

    private string Title => name.Trim().Length > 0 ? name.Trim() : "My car";

    private string? NameRefusal =>
        reading.Refusals.GetValueOrDefault(SheetReading.Named) ?? (name.Trim().Length > 0 ? FileName.Problem(FileName.Of(Title, "")) : null);

    private bool IsRefused => reading.IsRefused || NameRefusal is not null;

    private SheetHeading Heading => SheetHeading.Of(sheet, reading, finding, estimated.Count);

    // What a worksheet asks and the sheet has already.
    private Dictionary<string, string[]> Known => new(StringComparer.Ordinal)
    {
        ["wheelbase"] = [typed.GetValueOrDefault(GarageSheet.Wheelbase) ?? ""],
        ["tyre"] = [typed.GetValueOrDefault("tyre") ?? ""],
        ["unsprung"] = [UnsprungSum.Of(typed.GetValueOrDefault("unsprung") ?? "", typed.GetValueOrDefault("unsprung") ?? "")],
        ["track"] = [typed.GetValueOrDefault("track") ?? "", typed.GetValueOrDefault("track") ?? ""],
    };

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        var said = QueryHelpers.ParseQuery(new Uri(Addresses.Uri).Query);
        name = said.GetValueOrDefault(SheetReading.Named).LastOrDefault() ?? "";
        foreach (var line in GarageSheet.Lines)
        {
            if (said.GetValueOrDefault(line.Key).LastOrDefault() is { Length: > 0 } words)
            {
                typed[line.Key] = words;
                if (said.GetValueOrDefault(line.Key + ReadingsKey).ToString() is { Length: > 0 } from)
                {
                    readings[line.Key] = from;
                }
            }
        }

        if (said.GetValueOrDefault(GarageSheet.BodyStyle).ToString() is { Length: > 0 } style)
        {
            typed[GarageSheet.BodyStyle] = style;
        }

        Look();
    }

    private void Choose(string style)
    {
        if (style.Length == 0)
        {
            typed.Remove(GarageSheet.BodyStyle);
        }
        else
        {
            typed[GarageSheet.BodyStyle] = style;
        }

        Keep();
    }

    private void Rename(string words)
    {
        name = words;
        Keep();
    }

    private void Type(SheetLine line, string words)
    {
        var whole = QuantityText.Whole(words, new QuantityEntry(line.Field, Garage.Units).Usual);
        readings.Remove(line.Key);
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

    // The sheet asks how far a spring moves for 50 mm at the wheel, a car file says both.
    private void Put(SheetLine line, WorkedOut worked)
    {
        typed[line.Key] = worked.Text.Replace(GarageSheet.Jack, "", StringComparison.Ordinal);
        readings[line.Key] = worked.From;
        Keep();
    }

    // What is typed stands in the address, so that a page loaded again has it.
    private void Keep()
    {
        Look();
        Addresses.NavigateTo(
            "sheet" + PageAddress.Query(
                [
                    (SheetReading.Named, name.Length > 0 ? name : null),
                    (GarageSheet.BodyStyle, typed.GetValueOrDefault(GarageSheet.BodyStyle)),
                    .. GarageSheet.Lines.SelectMany(line => new[]
                    {
                        (line.Key, typed.GetValueOrDefault(line.Key)), (line.Key + ReadingsKey, readings.GetValueOrDefault(line.Key)),
                    }),
                ]),
            replace: true);
    }

    private void Look()
    {
        sheet = GarageSheet.Of(Title, typed, Garage.Units, readings);
        estimated = [.. sheet.Estimates.Keys.Where(key => !typed.ContainsKey(key) && !IsIdle(key))];
        reading = SheetReading.Of(sheet);
        finding = null;
        problem = Garage.Units.Leaving(typed.Values).Text(string.Join(' ', reading.Elsewhere));
        if (reading.Car is not { } car)
        {
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

        const double Little = 100.0 * SheetFinding.Little;
        var (ratio, damping) = (100.0 * SheetFinding.ShareOf(finding.Ratio, line), 100.0 * SheetFinding.ShareOf(finding.Damping, line));
        return (ratio >= Little, damping >= Little) switch
        {
            (true, true) => Text($" It makes {ratio:F0} % of the variance of rear over front, {damping:F0} % of that of the rear damping ratio."),
            (true, false) => Text($" It makes {ratio:F0} % of the variance of rear over front."),
            (false, true) => Text($" It makes {damping:F0} % of the variance of the rear damping ratio."),
            _ => " It hardly moves the frequencies or the damping.",
        };
    }

    private void Save(string next)
    {
        if (SheetHeading.Missing(sheet) is { } missing)
        {
            problem = missing;
            return;
        }

        var file = FileName.Of(Title, "");
        if (FileName.Problem(file) is { } words)
        {
            problem = words;
            return;
        }

        if (reading.Car is null || sheet.Text is not { } text)
        {
            return;
        }

        var saved = Garage.Garage.Save(file, text, null);
        problem = FileName.Problem(saved, file);
        if (problem.Length == 0)
        {
            Addresses.NavigateTo(InHand.For(GarageView.NameOf(file)).On(next));
        }
    }
}
