using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.Cli;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Pages.Reports;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

/// <summary>A variant's base is the car before the change, whoever is named first: at the command, on the pages and in the library.</summary>
public class BaseFirstTests
{
    private const string Saloon = "examples/garage/fern-saloon.yaml";
    private const string Cured = "examples/garage/fern-saloon-cured.yaml";
    private const string Towing = "examples/garage/fern-saloon-cured-towing.yaml";
    private const string Turned = "Turned round: Fern saloon, cured is built on Fern saloon, so Fern saloon is the car before the change.";

    private static readonly ServeOptions Options = new() { Garage = Path.Combine(Checkout.Root, "examples", "garage") };
    private static readonly GarageView Garage = new(Options);

    [Fact]
    public void A_variant_is_built_on_its_base_and_on_the_base_of_that_and_on_no_other_car()
    {
        IReadOnlyList<InputText> Of(string name) => ((IFinder)Garage).Car(name).Inputs;
        var (saloon, cured, towing, van) = (Of("fern-saloon"), Of("fern-saloon-cured"), Of("fern-saloon-cured-towing"), Of("drover-van"));
        Assert.True(BaseFirst.IsVariantOf(cured, saloon));
        Assert.True(BaseFirst.IsVariantOf(towing, saloon));
        Assert.True(BaseFirst.IsVariantOf(towing, cured));
        Assert.False(BaseFirst.IsVariantOf(saloon, towing));
        Assert.False(BaseFirst.IsVariantOf(saloon, saloon));
        Assert.False(BaseFirst.IsVariantOf(van, saloon));
        Assert.Equal(2, BaseFirst.PlaceIn([towing, cured, saloon]));
        Assert.Equal(1, BaseFirst.PlaceIn([cured, saloon, towing]));
        Assert.Equal(0, BaseFirst.PlaceIn([saloon, cured]));
        Assert.Equal(0, BaseFirst.PlaceIn([van, saloon, cured]));
    }

    [Theory]
    [InlineData("compare")]
    [InlineData("cost")]
    public void Cars_named_the_other_way_round_give_the_same_numbers_and_one_line_that_says_so(string command)
    {
        var (right, turned) = (Spoken.Of(command, Saloon, Cured), Spoken.Of(command, Cured, Saloon));
        Assert.Equal((0, 0), (right.Code, turned.Code));
        Assert.DoesNotContain("Turned round", right.Results, StringComparison.Ordinal);
        var said = turned.Results.Split('\n');
        Assert.Equal(1, said.Count(line => line == Turned));
        Assert.Equal(right.Results.Split('\n').Where(line => line.Length > 0), said.Where(line => line.Length > 0 && line != Turned));
    }

    [Fact]
    public void A_grandchild_named_first_stands_behind_the_car_at_the_bottom_and_a_stranger_is_left_where_it_is()
    {
        var said = Spoken.Of("cost", Towing, Saloon).Results;
        Assert.Contains("cured, towing is built on Fern saloon, so Fern saloon is the car before", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Turned round", Spoken.Of("cost", Cured, "examples/garage/drover-van.yaml").Results, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_of_the_report_holds_the_variant_against_its_base_and_says_so()
    {
        ReportQuestion Of(string query) => ReportQuestion.Of(ReportQuery.Of(query), Garage, Options);
        var (right, turned) = (
            Of("?car=fern-saloon&car=fern-saloon-cured&parts=cost&date=x"), Of("?car=fern-saloon-cured&car=fern-saloon&parts=cost&date=x"));
        Assert.Equal(["Fern saloon", "Fern saloon, cured"], turned.Html!.Cars.Select(c => c.Name));
        Assert.Equal(("", Turned), (right.Turned, turned.Turned));
        Assert.Equal("Fern saloon; Fern saloon, cured", turned.UsualTitle);
        var parts = Heaveline.Reports.Report.From(turned.Html with { Draws = 10 }).Parts;
        Assert.Equal(Turned, Assert.IsType<Paragraph>(parts[0].Blocks[0]).Text);
    }

    [Fact]
    public void A_variant_drawn_behind_its_base_is_the_car_after_the_change_until_something_is_set()
    {
        var trial = new PassTrial(Garage);
        var (onBase, onVariant) = (
            new PassState { Car = "fern-saloon", Load = "driver", Beside = "fern-saloon-cured" },
            new PassState { Car = "fern-saloon-cured", Load = "driver", Beside = "fern-saloon" });
        var (turned, right) = (trial.See(onBase, full: false).View!, trial.See(onVariant, full: false).View!);
        Assert.Equal((true, false), (turned.IsTurned, right.IsTurned));
        foreach (var view in new[] { turned, right })
        {
            Assert.Equal(("Fern saloon", "Fern saloon, cured"), (view.Before!.Name, view.After.Name));
        }

        Assert.Equal(
            MeasureChange.Of(right.After, right.Before).Select(c => (c.Measure.Key, c.Words)),
            MeasureChange.Of(turned.After, turned.Before).Select(c => (c.Measure.Key, c.Words)));
        string Said(PassView view) => PassWords.Against(view)!;
        Assert.StartsWith(Turned, Said(turned), StringComparison.Ordinal);
        Assert.StartsWith("Against Fern saloon: ", Said(right), StringComparison.Ordinal);
        Assert.Equal(PassVerdict.Of(right), PassVerdict.Of(turned));
        Assert.Equal(PassWords.Heading(right), PassWords.Heading(turned));
        Assert.StartsWith("Fern saloon, cured over ", PassWords.Heading(turned), StringComparison.Ordinal);
        string Tables(PassView view) => JsonNode.Parse(PassRoutes.Json(view, "x"))!["tables"]!.ToJsonString();
        Assert.Equal(Tables(right), Tables(turned));

        // The nods of both are told from the base to the variant, whichever of them the labels stand at.
        (double From, double To)[] Nods(PassView view) =>
        [
            .. PassCurves.Of(view.Now, view.Former, view.IsTurned).Panels.OfType<ChartPanel>().Single(panel => panel.Id == "pitch").Marks
                .Select(mark => mark.Label.TrimEnd('°').Split(" → ")).Where(label => label.Length == 2)
                .Select(label => (double.Parse(label[0], CultureInfo.InvariantCulture), double.Parse(label[1], CultureInfo.InvariantCulture))),
        ];
        Assert.NotEmpty(Nods(right));
        Assert.Contains(Nods(turned), nod => nod.From != nod.To && Nods(right).Contains(nod));
        Assert.True(JsonNode.Parse(PassFrame.Of(turned, ReaderUnits.Metric, null, new()).Structure)!["scene"]!["turned"]!.GetValue<bool>());

        // With something set the chosen car is no longer the base as it is: it is what is tried against the variant.
        var set = trial.See(onBase.With("rear-spring", 48.0), full: false).View!;
        Assert.Equal((false, "as set", "fern-saloon-cured"), (set.IsTurned, set.After.Name, set.Before!.Name));
    }
}
