using Heaveline.Figures;
using Heaveline.Files.Cars;
using Heaveline.Modes;
using Heaveline.Press;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Figures;

/// <summary>Figures of the invented cars that ship as examples, to be printed and looked at.</summary>
public class GarageFigureTests
{
    /// <summary>Every file of the example garage.</summary>
    public static IEnumerable<TheoryDataRow<string>> Files =>
        Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml")
            .Select(Path.GetFileNameWithoutExtension).Order().Select(name => new TheoryDataRow<string>(name!));

    /// <summary>Set HEAVELINE_SAMPLES to a folder to keep the files there and look at them.</summary>
    [Theory, MemberData(nameof(Files))]
    public void Every_car_of_the_example_garage_prints(string name)
    {
        var kept = Environment.GetEnvironmentVariable("HEAVELINE_SAMPLES");
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", name + ".yaml")).Value!;
        var models = DrawnCars.Loaded(car);
        var (pass, measures) = DrawnCars.Over(DrawnCars.Hump, car, 30.0, models[^1].Load);
        foreach (var (kind, figure) in new[]
        {
            ("loads", LoadStatesFigure.Of(models)),
            ("modes", ModesFigure.Of(models[^1], BodyModes.Of(models[^1]))),
            ("pass", PassFigure.Of(pass, measures)),
        })
        {
            var png = Png.Of(figure);
            Assert.True(png.Length > 20_000, $"{name} {kind} is nearly empty");
            if (kept is not null)
            {
                File.WriteAllBytes(Path.Combine(kept, $"garage-{name}-{kind}.png"), png);
            }
        }
    }
}
