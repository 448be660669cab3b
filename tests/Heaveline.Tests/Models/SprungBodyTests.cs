using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Tests.Models;

public class SprungBodyTests
{
    [Fact]
    public void The_order_of_loads_does_not_matter_and_taking_them_emptiedagain_restores_the_body()
    {
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads).Sample((car, loads) =>
        {
            var empty = SprungBody.Of(car);
            var full = empty.With(loads);
            var turned = empty.With(loads with { Loads = [.. loads.Loads.Reverse()] });
            var emptied = full.With(new LoadState { Name = "out", Loads = [.. loads.Loads.Select(l => l with { Mass = new(-l.Mass.Si) })] });
            Assert.Equal(full.PitchInertia, turned.PitchInertia, 1e-8);
            Assert.Equal(empty.Mass, emptied.Mass, 1e-9);
            Assert.Equal(empty.BehindFrontAxle, emptied.BehindFrontAxle, 1e-9);
            Assert.Equal(empty.LeftOfMiddle, emptied.LeftOfMiddle, 1e-9);
            Assert.Equal(empty.PitchInertia, emptied.PitchInertia, 1e-6);
            Assert.Equal(empty.RollInertia, emptied.RollInertia, 1e-6);
            Assert.Equal(empty.InertiaProduct, emptied.InertiaProduct, 1e-6);
        }, iter: 200);
    }

    [Fact]
    public void A_load_off_the_centre_adds_the_reduced_mass_times_its_distances()
    {
        var empty = SprungBody.Of(PlainCar.Saloon);
        var full = empty.With(PlainCar.With(200.0, empty.BehindFrontAxle - 0.8, left: 0.5));
        // Two bodies about their common centre: m·M/(m + M) times the distance squared (Steiner).
        var reduced = 200.0 * empty.Mass / (200.0 + empty.Mass);
        Assert.Equal(empty.PitchInertia + (reduced * 0.64), full.PitchInertia, 1e-8);
        Assert.Equal(empty.RollInertia + (reduced * 0.25), full.RollInertia, 1e-8);
        Assert.Equal(reduced * 0.8 * 0.5, full.InertiaProduct, 1e-8);
    }
}
