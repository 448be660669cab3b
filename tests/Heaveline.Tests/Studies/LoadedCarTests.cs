using Heaveline.Cars;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class LoadedCarTests
{
    private static readonly LoadState Driver = PlainCar.With(80.0, 1.5) with { Name = "driver" };
    private static readonly LoadState Four = PlainCar.With(300.0, 2.0) with { Name = "four" };
    private static readonly Car Two = PlainCar.Saloon with { LoadStates = [Driver, Four] };

    [Theory]
    [InlineData("four", "four")]
    [InlineData("driver", "driver")]
    [InlineData("empty", "empty")]
    [InlineData("horses", "driver")]
    public void A_car_beside_another_has_its_own_load_of_that_name_or_its_first(string other, string own)
    {
        var beside = LoadedCar.Beside("beside", Two, other == "empty" ? LoadState.Reference : PlainCar.With(500.0, 2.0) with { Name = other });
        Assert.Equal(("beside", own), (beside.Name, beside.Load.Name));
        Assert.Same(own == "empty" ? LoadState.Reference : Two.LoadStates.Single(l => l.Name == own), beside.Load);
    }

    [Fact]
    public void A_car_without_loads_stands_empty_beside_another() =>
        Assert.Same(LoadState.Reference, LoadedCar.Beside("beside", PlainCar.Saloon with { LoadStates = [] }, Four).Load);
}
