using Bunit;
using Heaveline.Measures;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Host;
using Heaveline.Web.Pages;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;

namespace Heaveline.Tests.Web;

/// <summary>Trials that are pinned on the pass.</summary>
public sealed class TrialTrayTests : BunitContext
{
    private const string Fern = "car=fern-saloon&load=four%20up%20with%20luggage";
    private const string Three = "described~~rear-damping_1.5~rear-spring_50~~rear-damping_1.5";

    public TrialTrayTests()
    {
        PageHost.AddPages(Services, new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    private static TimeSpan Patience => TimeSpan.FromSeconds(120);

    private NavigationManager Addresses => Services.GetRequiredService<NavigationManager>();

    private GarageView Garage => Services.GetRequiredService<GarageView>();

    [Fact]
    public void Pins_stand_in_the_address_and_go_along_to_other_pages()
    {
        var state = PassState.Of($"?{Fern}&pins={Three}&speed=30", "");
        Assert.Empty(state.Unread);
        Assert.Equal(["described", "rear-damping_1.5~rear-spring_50", "rear-damping_1.5"], state.Pins.Select(pin => pin.Word));
        Assert.Equal(Three, PassPin.Write(PassState.Of(state.Query, "").Pins));
        Assert.Contains($"pins={Three}", state.Query, StringComparison.Ordinal);
        foreach (var page in new[] { "rule", "ride", "report", "car", "" })
        {
            Assert.Equal(Three, CurrentCar.Of(CurrentCar.Of(state.Query).On(page).Split('?')[1]).Pins);
        }

        Assert.Contains($"pins={Three}", Heaveline.Web.Pages.Reports.ReportQuery.Of($"?{Fern}&pins={Three}").Address, StringComparison.Ordinal);

        // Another car is another matter.
        Assert.Null(CurrentCar.Of(state.Query).For("plover-motorcycle").Pins);
        Assert.Equal(Three, CurrentCar.Of(state.Query).AsDescribed().Pins);
    }

    [Theory]
    [InlineData("rear-spring")]
    [InlineData("rear-spring_soft")]
    [InlineData("speed_30")]
    [InlineData("~~")]
    [InlineData("described~~rear-spring_50~~rear-spring_51~~rear-spring_52")]
    public void Pins_that_cannot_be_read_are_said_in_words(string pins)
    {
        Addresses.NavigateTo($"/pass?{Fern}&pins={Uri.EscapeDataString(pins)}");
        Assert.Contains("there are at most 3 trials", Render<PassPage>().Find("section.refused").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pin_takes_its_own_settings_and_leaves_road_speed_and_load()
    {
        var state = PassState.Of($"?{Fern}&rear-spring=50&wheelbase=2.8&inertia=grows&speed=30&height=60&luggage=20", "");
        var pin = PassPin.Of(state);
        Assert.Equal("luggage_20~rear-spring_50~wheelbase_2.8~inertia_grows", pin.Word);
        var on = pin.On(PassState.Of($"?{Fern}&front-spring=20&speed=60", ""));
        Assert.Equal(["luggage", "rear-spring", "speed", "wheelbase"], on.Values.Keys);
        Assert.Equal((60.0, true, "four up with luggage"), (on.KilometresPerHour, on.InertiaGrows, on.Load));
        Assert.Equal(pin.Word, PassPin.Of(on).Word);
    }

    [Fact]
    public void Its_numbers_are_those_that_the_page_shows_when_the_trial_is_taken()
    {
        var state = PassState.Of($"?{Fern}&pins={Three}", "");
        var tray = TrayView.Of(Garage, state, Xunit.TestContext.Current.CancellationToken);
        foreach (var pin in state.Pins)
        {
            var taken = new PassTrial(Garage).See(pin.On(state), full: true).View!;
            var trial = tray.Trials[pin.Word];
            Assert.Equal(3, trial.Numbers.Count);
            foreach (var (name, value) in trial.Numbers)
            {
                var change = taken.Changes.Single(one => one.Measure.Label == name);
                Assert.Equal(change.PrintWithUnit(change.After), value);
            }

            Assert.NotEmpty(trial.Curve);
            Assert.Equal(pin.Word == "described", trial.Behind.Length == 0);
        }

        Assert.Equal("rear spring 50 N/mm, rear damping 1.5 × described", tray.Trials[state.Pins[1].Word].Words, ignoreCase: true);
        Assert.Equal("as described", tray.Trials["described"].Words);
        var nods = tray.Trials.Values.Select(trial => trial.Numbers[0].Value).ToList();
        Assert.Equal(3, nods.Distinct().Count());
        Assert.Contains("less nodding", tray.Trials[state.Pins[1].Word].Effect, StringComparison.Ordinal);

        // The third number is the room of the axle that has least of it.
        var least = Least(state, "rear") < Least(state, "front") ? "rear" : "front";
        Assert.Contains(least, tray.Trials["described"].Numbers[2].Name, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Every_load_of_the_car_stands_in_the_row_with_the_number_that_it_would_show()
    {
        var state = PassState.Of($"?{Fern}&rear-spring=50", "");
        var tray = TrayView.Of(Garage, state, Xunit.TestContext.Current.CancellationToken);
        var car = Garage.Car("fern-saloon")!.Value!;
        Assert.Equal(car.LoadStates.Select(load => load.Name).Append("empty").Distinct(), tray.Loads.Select(load => load.Load));
        foreach (var (load, trial) in tray.Loads)
        {
            var view = new PassTrial(Garage).See(state with { Load = load }, full: true).View!;
            var nod = view.Changes.Single(one => one.Measure == PassCatalogue.PitchOver(view.Now.Pass.Road)[0]);
            Assert.Equal(nod.PrintWithUnit(nod.After), trial.Numbers[0].Value);
        }
    }

    [Fact]
    public void A_letter_stays_with_its_trial_and_a_free_one_is_given_again()
    {
        var pins = PassPin.Read("~~rear-spring_50")!;
        Assert.Equal([1], pins.Select(pin => pin.Place));
        var more = PassPin.With(PassPin.With(pins, PassPin.AsDescribed), PassPin.Read("rear-spring_40")![0]);
        Assert.Equal("described~~rear-spring_50~~rear-spring_40", PassPin.Write(more));
        Assert.Equal("described~~~~rear-spring_40", PassPin.Write([.. more.Where(pin => pin.Place != 1)]));
        Assert.Equal([0, 2], PassPin.Read("described~~~~rear-spring_40")!.Select(pin => pin.Place));
    }

    [Fact]
    public void Pins_go_along_to_a_variant_that_is_kept_where_it_can_say_them()
    {
        var state = PassState.Of($"?{Fern}&rear-spring=50&rear-damping=1.5&pins=described~~rear-spring_50~~front-damping_1.2~rear-damping_1.5", "");
        var view = new PassTrial(Garage).See(state, full: false).View!;
        var variant = Garage.Garage.Car("fern-saloon-kept.yaml", PassVariant.Write(view, "kept").Text!).Value!;
        var (pins, left) = PinsAlong.Of(view, variant);
        Assert.Empty(left);
        Assert.Equal([0, 1, 2], pins.Select(pin => pin.Place));
        var former = Garage.Car("fern-saloon")!.Value!.Rear;
        Assert.Equal(["rear-damping", "rear-spring"], pins[0].Values.Keys);
        Assert.Equal(["rear-damping"], pins[1].Values.Keys);
        Assert.Equal(["front-damping", "rear-spring"], pins[2].Values.Keys);
        Assert.Equal(1.0 / 1.5, pins[0].Values["rear-damping"], 1e-9);
        Assert.Equal(((Heaveline.Cars.LinearSpring)former.Spring.Law).Rate.Si / 1000.0, pins[0].Values["rear-spring"], 1e-9);

        // Luggage that is kept is a load of the variant: no setting takes it out.
        var laden = new PassTrial(Garage).See(PassState.Of($"?{Fern}&luggage=60&pins=described", ""), full: false).View!;
        var loaded = Garage.Garage.Car("fern-saloon-kept.yaml", PassVariant.Write(laden, "kept").Text!).Value!;
        var (none, behind) = PinsAlong.Of(laden, loaded);
        Assert.Empty(none);
        Assert.Equal([0], behind);
    }

    [Fact]
    public void A_load_that_breaks_off_takes_the_number_from_no_other()
    {
        var none = Xunit.TestContext.Current.CancellationToken;
        var found = 0;
        foreach (var height in Enumerable.Range(0, 16).Select(n => 100.0 + (20.0 * n)))
        {
            var state = PassState.Of("?car=fern-saloon&road=village-hump&speed=60", "").With("height", height);
            var loads = TrayView.Of(Garage, state, none).Loads;
            if (loads.FirstOrDefault(one => one.Trial.BreaksOff).Load is { } broken && loads.Any(one => !one.Trial.BreaksOff))
            {
                found++;
                var tray = TrayView.Of(Garage, state with { Load = broken }, none);
                Assert.All(tray.Loads, one => Assert.Equal(one.Trial.BreaksOff, one.Trial.Numbers.Count == 0));
                Assert.Contains(tray.Loads, one => one.Trial.Numbers.Count == 1);
                Assert.NotEmpty(tray.Nod);
            }
        }

        Assert.True(found > 0, "no height parts the loads");
    }

    [Fact]
    public void A_trial_that_this_car_cannot_have_says_why_and_the_others_stand()
    {
        var state = PassState.Of($"?{Fern}&pins=described~~rear-spring_-5", "");
        var tray = TrayView.Of(Garage, state, Xunit.TestContext.Current.CancellationToken);
        Assert.NotEmpty(tray.Trials["described"].Numbers);
        Assert.Contains("above 0", tray.Trials["rear-spring_-5"].Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Trials_are_pinned_taken_and_let_go_on_the_page()
    {
        Addresses.NavigateTo($"/pass?{Fern}&rear-spring=50");
        var page = Render<PassPage>();
        page.Find("#pin").Click();
        page.WaitForState(() => page.FindAll(".pins dl").Count == 1, Patience);
        Said("pins=rear-spring_50");
        Assert.True(page.Find("#pin").HasAttribute("disabled"));
        Assert.Equal("true", page.Find(".pins li").GetAttribute("aria-current"));
        Assert.Contains("pinned as A", page.Find("#tray-said").TextContent, StringComparison.Ordinal);

        page.Find("#all-described").Click();
        page.WaitForState(() => !page.Find("#pin").HasAttribute("disabled"), Patience);
        page.Find("#pin").Click();
        page.WaitForState(() => page.FindAll(".pins dl").Count == 2, Patience);
        Said("pins=rear-spring_50~~described");
        Press(".pins button[aria-label='take it into the sliders: A']");
        Said("rear-spring=50");
        Press(".pins button[aria-label='unpin A']");
        Said("pins=~~described");
        Assert.Equal("B", page.Find(".pins li b").TextContent);
        page.WaitForState(() => page.FindAll(".pins li").Count == 1, Patience);

        page.WaitForState(() => page.FindAll(".tray-loads button").Count > 2, Patience);
        page.FindAll(".tray-loads button").First(button => button.TextContent.Contains("empty", StringComparison.Ordinal)).Click();
        Said("load=empty");

        // The tray comes from the background: a press waits its turn behind it.
        void Said(string words) => page.WaitForAssertion(() => Assert.Contains(words, Addresses.Uri, StringComparison.Ordinal), Patience);
        void Press(string selector) => page.Find(selector).Click();
    }

    [Fact]
    public void Pinned_trials_are_compared_over_speeds_by_the_study_that_compares_cars()
    {
        var view = new PassTrial(Garage).See(PassState.Of($"?{Fern}&pins={Three}&speed=47", ""), full: false).View!;
        var asked = TrialSpeeds.Asked(view);
        Assert.Equal(["A, as described", "B", "C"], asked.Cars.Select(car => car.Name));
        Assert.All(asked.Cars, car => Assert.Equal("four up with luggage", car.Load.Name));
        Assert.Contains(asked.Speeds, speed => Math.Abs((speed * 3.6) - 47.0) < 1e-9);
        var few = asked with { Speeds = [.. asked.Speeds.Where((_, i) => i % 5 == 0)] };
        var answer = CompareStudy.Run(few);
        Assert.Null(answer.Failure);
        Assert.Contains(CompareAnswer.OverSpeeds, answer.FigureIds);

        // One pin alone is held against the car as described; what is set now stands beside those that are pinned.
        var one = TrialSpeeds.Asked(new PassTrial(Garage).See(PassState.Of($"?{Fern}&pins=rear-spring_50&rear-spring=50", ""), full: false).View!);
        Assert.Equal(["as described", "A, rear spring 50 N/mm"], one.Cars.Select(car => car.Name));
        var set = TrialSpeeds.Asked(new PassTrial(Garage).See(PassState.Of($"?{Fern}&pins=described&rear-spring=50", ""), full: false).View!);
        Assert.Equal(["A, as described", "as set now"], set.Cars.Select(car => car.Name));
    }

    [Fact]
    public void Compared_over_speeds_they_are_drawn_on_the_page()
    {
        Addresses.NavigateTo($"/pass?{Fern}&pins=described~~rear-spring_50");
        var page = Render<PassPage>();
        page.Find("#over-speeds").Click();
        page.WaitForState(() => page.FindAll(".trial-speeds figcaption").Count == 1, TimeSpan.FromSeconds(120));
        Assert.Contains("Road: round-top hump", page.Find(".trial-speeds figcaption").TextContent, StringComparison.Ordinal);
    }

    private double Least(PassState state, string end) => state.Pins.Select(pin => new PassTrial(Garage).See(pin.On(state), full: false).View!)
        .Min(view => view.Changes.Single(one => one.Measure.Key == $"{end}-bump-margin").After!.Value);
}
