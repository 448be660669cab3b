using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Studies;

/// <summary>Cures of a car that stands on its bump stops.</summary>
public class CureStopsTests
{
    private static readonly Car Saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;

    private static readonly LoadState Full = Saloon.LoadStates.Single(load => load.Name == "four up with luggage");

    [Fact]
    public void A_stop_that_is_pressed_standing_is_met_at_nothing_and_to_come_just_free_of_it_is_not_sooner()
    {
        var (on, off) = (CureStance.Of(RideModel.Of(WithLeft(-0.001), Full)), CureStance.Of(RideModel.Of(WithLeft(0.0003), Full)));
        Assert.Equal(0.0, on.Accelerating);
        Assert.InRange(off.Accelerating, 1e-4, CureStance.LeastFirstStop);
        Assert.Equal(CureBreach.None, off.Breach(on));
        Assert.NotEqual(CureBreach.None, on.Breach(off));
        Assert.Equal(0.0003, off.FreeBy(on)!.Value, 1e-6);
        Assert.Matches(
            "^it stands on one as described; comes free by 0.3 mm and meets it at 0.0[0-9] g$",
            CureStopWords.Of(on, off, 1));
        Assert.Equal((CureBreach.None, null), (on.Breach(on), on.FreeBy(on)));
    }

    [Fact]
    public void Where_another_load_meets_a_stop_sooner_and_as_before_that_load_is_named()
    {
        CureStance Stance(double left) => CureStance.Of(RideModel.Of(WithLeft(left), Full));
        var (far, farther, near) = (Stance(0.020), Stance(0.022), Stance(0.005));
        Assert.True(near.Accelerating < far.Accelerating);
        var words = CureStopWords.Of([("driver", far, farther), ("four up with luggage", near, near)])!;
        Assert.Contains(
            $" under 'driver', soonest under 'four up with luggage', {CureStance.Print(near.Accelerating)} as before",
            words,
            StringComparison.Ordinal);
        Assert.DoesNotContain("soonest", CureStopWords.Of([("driver", far, farther)])!, StringComparison.Ordinal);
        Assert.Contains(
            "and under 'four up with luggage' it stands on one as before",
            CureStopWords.Of([("driver", far, farther), ("four up with luggage", Stance(-0.001), Stance(-0.001))])!,
            StringComparison.Ordinal);
    }

    [Fact]
    public void No_cure_of_such_a_car_is_told_to_meet_a_stop_from_more_than_1_g()
    {
        var answer = CureStudy.Run(new CureAsked
        {
            Car = LoadedCar.Of(WithLeft(-0.001), Full),
            Road = NamedRoads.Find("village-hump").Value!,
            Speed = 40.0 / 3.6,
            Draws = 10,
            Seed = 5,
        });
        Assert.DoesNotContain(answer.Told.SelectMany(said => said), said => said.Text.Contains("more than 1 g → 0", StringComparison.Ordinal));
        foreach (var cure in answer.Cures)
        {
            foreach (var (was, now) in answer.Described.Zip(cure.Passes))
            {
                Assert.Equal(CureBreach.None, CureStance.Of(now.Model).Breach(CureStance.Of(was.Model)));
            }
        }
    }

    // The saloon with its rear bump stops so high that under its full load so much is left to them, or pressed.
    private static Car WithLeft(double left)
    {
        Car With(double clearance) => Saloon with
        {
            Rear = Saloon.Rear with { BumpStop = Saloon.Rear.BumpStop! with { Clearance = new Amount<Length>(clearance) } },
        };
        var free = Saloon.Rear.BumpStop!.Clearance.Si;
        var trim = RideModel.Of(Saloon, Full).Trim;
        return With(free - Math.Min(trim.BumpLeft[2], trim.BumpLeft[3]) + left);
    }
}
