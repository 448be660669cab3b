using Heaveline.Cars;
using Heaveline.Files.Parts;
using Heaveline.Files.Roads;
using Heaveline.Parts;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>The invented factor's list and the invented saloon, as a reader meets them.</summary>
public class ChooseDemoTests
{
    private static readonly PartsList Village = PartsFile.Load(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml")).Value!;

    private static readonly ChooseAsked Asked = new()
    {
        Car = VillageParts.Saloon,
        Lists = [Village],
        Roads =
        [
            new("village-hump", NamedRoads.Find("village-hump").Value!, [25.0 / 3.6, 40.0 / 3.6, 60.0 / 3.6]),
            new("short-bump", NamedRoads.Find("short-bump").Value!, [50.0 / 3.6, 80.0 / 3.6]),
        ],
        IsUsualUse = true,
        Class = RoadClass.C,
        RideSpeeds = [60.0 / 3.6, 100.0 / 3.6],
        Loads = [.. VillageParts.Saloon.LoadStates],
        Limits = new() { Cost = new Money(600m, "EUR") },
        Draws = 64,
    };

    [Fact]
    public void The_village_factor_cures_the_saloon_for_less_than_six_hundred()
    {
        var answer = ChooseStudy.Run(Asked, new StudyRun { Degree = 2 });
        var best = answer.Findings.List[0];
        Assert.True(answer.Findings.Parts.Space.Price(best.Entry.Setup) <= 600.0);
        // A fifth of the settling at least, in nine drawn cars of ten, over every obstacle, load and speed together.
        Assert.True(best.Entry.Tried.Ninth(0) <= 0.8, $"{best.Entry.Tried.Ninth(0)}");
        Assert.True(answer.Findings.Found.IsWhole);
        Assert.True(answer.Findings.Found.AreSilentChosen);
        Assert.Equal(answer.Findings.List.Select(one => one.Letter), answer.Findings.List.Select((_, k) => ((char)('A' + k)).ToString()));
    }

    [Fact]
    public void The_figure_letters_the_shortlist_and_crosses_the_car_as_it_is()
    {
        var answer = ChooseStudy.Run(Asked with { Draws = 10 }, new StudyRun { Degree = 2 });
        var panel = Assert.IsType<Heaveline.Figures.ChartPanel>(Assert.Single(answer.Figure(ChooseAnswer.TradeOff).Panels));
        Assert.All(answer.Findings.List, one => Assert.Contains(panel.Marks, mark => mark.Label == one.Letter));
        Assert.Contains(panel.Marks, mark => mark is { Label: "as it is", X: 100.0, Y: 0.0 });
        Assert.Equal("EUR", panel.Y.Unit);
    }

    [Fact]
    public void From_a_list_of_what_is_in_the_car_already_nothing_should_be_bought()
    {
        var same = Village with { Parts = [.. Village.Parts.Where(part => part.Name is "Larch L-207" or "Larch R-380")] };
        var answer = ChooseStudy.Run(Asked with { Lists = [same], Draws = 16 }, new StudyRun { Degree = 2 });
        Assert.Empty(answer.Findings.List);
        Assert.StartsWith("Leave it as it is", answer.Finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_load_that_nobody_drives_with_is_looked_at_all_the_same()
    {
        var driver = Asked with { Loads = [VillageParts.Saloon.LoadStates.Single(load => load.Name == "driver")], Draws = 10 };
        var answer = ChooseStudy.Run(driver, new StudyRun { Degree = 2 });
        Assert.Equal(["four up with luggage", LoadState.Reference.Name], answer.Findings.Stood.Others.Select(load => load.Name));
        Assert.Contains(answer.Sentences, s => s.Id == "limits" && s.Text.Contains("'four up with luggage'", StringComparison.Ordinal));
    }
}
