using Heaveline.Passes;
using Heaveline.Studies;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

public class PassCureTests
{
    private static readonly string Garage = Path.Combine(Checkout.Root, "examples", "garage");
    private static readonly GarageView Demo = new(new ServeOptions { Garage = Garage });
    private static readonly PassState Laden = new() { Car = "fern-saloon", Load = "four up with luggage" };

    public static TheoryData<string> Cars =>
        [.. Directory.EnumerateFiles(Garage, "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    /// <summary>Pressed, and written into the garage as a variant and read again, a cure does under every load what was printed of it.</summary>
    [Theory]
    [MemberData(nameof(Cars))]
    public void A_cure_pressed_or_kept_as_a_variant_does_what_was_said_of_it(string car)
    {
        var trial = new PassTrial(Demo);
        var state = new PassState { Car = car };
        var view = trial.See(state, full: true).View!;
        var answer = CureStudy.Run(CureView.Ask(view, CureAim.Settling, Demo).Asked! with { Draws = 10 }, new StudyRun { Degree = 2 });
        string Print(Pass pass) => answer.Measure.Print(answer.Measure.ShownOf(pass)!.Value);
        Assert.Equal(Print(view.Now.Pass), Print(answer.Described[0].Pass));
        foreach (var cure in answer.Cures)
        {
            var pressed = trial.See(CureView.Press(state, cure), full: true).View!;
            Assert.Equal(Print(cure.Passes[0].Pass), Print(pressed.Now.Pass));

            var text = PassVariant.Write(pressed, "a cure").Text;
            Assert.NotNull(text);
            var kept = Demo.Garage.Car($"{car}-a-cure.yaml", text).Value!;
            foreach (var pass in cure.Passes)
            {
                var again = PassStudy.Run(new PassAsked
                {
                    Car = LoadedCar.Of(kept, LoadedCar.LoadNamed(kept, pass.Model.Load.Name)),
                    Road = view.Now.Pass.Road,
                    Speed = view.Now.Pass.Speed,
                });
                Assert.Equal(Print(pass.Pass), Print(again.Pass));
            }
        }
    }

    [Fact]
    public void What_is_asked_is_the_car_as_described_under_the_load_over_the_road_and_at_the_speed_of_the_page()
    {
        var state = Laden.With("speed", 30.0).With("height", 50.0).With("luggage", 60.0);
        var asked = Asked(state);
        Assert.Equal("four up with luggage and 60 kg more", asked.Car.Load.Name);
        Assert.Equal(30.0 / 3.6, asked.Speed, 1e-12);
        Assert.Equal(0.05, ObstacleHeight.Of(asked.Road), 1e-6);

        // What is tried on the car is no other question; load, road, speed and what is to be less are.
        Assert.Equal(Key(state), Key(state.With("front-spring", 18.5).With("rear-stop", 110.0)));
        string[] others =
            [Key(state with { Load = "driver" }), Key(state.With("speed", 31.0)), Key(state.With("height", 51.0)), Key(state.With("luggage", null))];
        Assert.DoesNotContain(Key(state), others);
        Assert.Equal(others.Distinct(), others);
        Assert.NotEqual(Key(state), CureView.Ask(See(state), CureAim.Hit, Demo).Key);
    }

    [Fact]
    public void A_cure_takes_the_place_of_what_is_tried_and_leaves_the_drive_as_it_is()
    {
        var cure = CureStudy.Run(Asked(Laden) with { Draws = 10 }).Cures[0];
        var state = Laden.With("speed", 30.0).With("height", 50.0).With("luggage", 60.0).With("wheelbase", 2800.0);
        Assert.False(CureView.IsSet(state, cure));
        var set = CureView.Press(state, cure);
        Assert.True(CureView.IsSet(set, cure));
        Assert.Equal((true, false, false), (CureView.Loses(state, cure), CureView.Loses(set, cure), CureView.Loses(Laden, cure)));
        Assert.False(CureView.IsSet(set.With("front-stop", 100.0), cure));
        Assert.Equal(new SortedSet<string>([.. cure.Values.Keys, "speed", "height", "luggage"]), new SortedSet<string>(set.Values.Keys));
        Assert.Equal(Laden.With("speed", 30.0).With("height", 50.0).With("luggage", 60.0).Query, CureView.Press(set, cure).Query);
    }

    private static PassView See(PassState state) => new PassTrial(Demo).See(state, full: true).View!;

    private static CureAsked Asked(PassState state) => CureView.Ask(See(state), CureAim.Settling, Demo).Asked!;

    private static string Key(PassState state) => CureView.Ask(See(state), CureAim.Settling, Demo).Key;
}
