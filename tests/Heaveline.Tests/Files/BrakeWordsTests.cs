using Heaveline.Cars;

namespace Heaveline.Tests.Files;

public class BrakeWordsTests
{
    [Fact]
    public void Brakes_are_read_with_their_doubts()
    {
        var car = TextCar.Read(Brakes("{front-share: 68 % ± 4, anti-dive: 20 % ± 10, driven: both, anti-squat: 0.4, wheel-radius: 31 cm}")).Value!;
        var brakes = car.Brakes!;
        Assert.Equal(0.68, brakes.FrontBrakeShare!.Value.Si, 1e-12);
        Assert.Equal(0.04, brakes.FrontBrakeShare.Value.Doubt.HalfWidth, 1e-12);
        Assert.Equal((0.2, 0.0, 0.4, 0.31), (brakes.AntiDiveFront.Si, brakes.AntiLiftRear.Si, brakes.AntiSquatRear.Si, brakes.WheelRadius.Si));
        Assert.Equal(DrivenAxle.Both, brakes.DrivenAxle);
    }

    [Theory]
    [InlineData("{driven: front, anti-squat: 0.4}", "the rear wheels do not drive")]
    [InlineData("{driven-anti-lift: 0.1}", "the front wheels do not drive")]
    [InlineData("{anti-dive: 25}", "between -2 and 1.5")]
    [InlineData("{front-share: 0}", "between 0.01 and 1")]
    public void What_cannot_be_is_refused(string brakes, string words) =>
        Assert.Contains(words, Assert.Single(TextCar.Read(Brakes(brakes)).Refusals).Message, StringComparison.Ordinal);

    [Fact]
    public void A_spring_by_its_wire_keeps_its_wire()
    {
        var car = TextCar.Read(TextCar.With("rate: 22 N/mm", "coil: {wire: 12.4 mm, mean-diameter: 118 mm, active-coils: 5.5}")).Value!;
        var dimensions = Assert.IsType<CoilDimensions>(Assert.IsType<LinearSpring>(car.Front.Spring.Law).Dimensions);
        Assert.Equal(0.0124, dimensions.Wire.Si, 1e-12);
    }

    private static string Brakes(string group) => TextCar.With("seats:", $"brakes: {group}\nseats:");
}
