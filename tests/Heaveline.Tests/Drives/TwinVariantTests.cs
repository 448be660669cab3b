using System.Text;
using Heaveline.Cars;
using Heaveline.Drives.Recovery;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Studies;
using Heaveline.Tests.Files;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Drives;

/// <summary>A twin written as a variant and read again: whatever the file gives its springs by.</summary>
public class TwinVariantTests
{
    private static readonly double[] Scaled = [1.06, 0.94, 1.15, 0.85, 1.0, 1.04];

    [Theory]
    [InlineData("fern-saloon.yaml")]
    [InlineData("thimble-city-car.yaml")]
    [InlineData("drover-van.yaml")]
    [InlineData("tarn-off-roader.yaml")]
    [InlineData("sprig-kit-car.yaml")]
    [InlineData("pebble-fluid-car.yaml")]
    [InlineData("plover-motorcycle.yaml")]
    public void Rates_sizes_tables_and_bars_are_read_back(string file) => Same(file, Garage(file));

    [Fact]
    public void A_gas_spring_keeps_its_area_and_a_rate_at_the_wheel_its_meaning()
    {
        const string rate = "rate: 20.7 N/mm ± 4 %\n    tester: club spring press\n    moves: 47.5 mm ± 0.5 mm for 50 mm at the wheel";
        var fern = File.ReadAllText(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).ReplaceLineEndings("\n");
        Assert.Contains(rate, fern, StringComparison.Ordinal);
        Same("gas.yaml", fern.Replace(rate, "gas: {area: 25 cm², volume: 0.9 L}\n    spring-per-wheel: 0.95", StringComparison.Ordinal));
        Same("wheel.yaml", fern.Replace(rate, "wheel-rate: 18.7 N/mm", StringComparison.Ordinal));
    }

    [Fact]
    public void A_damping_ratio_stays_that_of_the_spring_that_is_written()
    {
        var (twin, read) = Read("thimble-city-car.yaml", Garage("thimble-city-car.yaml"), "the drive took away too little");
        // The rear spring stays the file's; its damper alone is 0.85 as strong.
        var (was, now) = (RideModel.Of(Car("thimble-city-car.yaml"), read.LoadStates[0]), RideModel.Of(read, read.LoadStates[0]));
        Assert.Equal(1.0, now.Tangent.SuspensionRate[2, 2] / was.Tangent.SuspensionRate[2, 2], 1e-9);
        Assert.Equal(0.85, now.Tangent.SuspensionDamping[2, 2] / was.Tangent.SuspensionDamping[2, 2], 0.003);
        Assert.False(twin.Of(TwinScale.RearSpring)!.IsSaid);
    }

    private static void Same(string file, string text)
    {
        var (twin, read) = Read(file, text, "");
        var load = read.LoadStates[0];
        var (expected, found) = (RideModel.Of(twin.Car, load).Tangent, RideModel.Of(read, load).Tangent);
        for (var wheel = 0; wheel < 4; wheel += 2)
        {
            var (stiff, damp) = (expected.SuspensionRate[wheel, wheel], expected.SuspensionDamping[wheel, wheel]);
            Assert.Equal(1.0, found.SuspensionRate[wheel, wheel] / stiff, 2e-3);
            Assert.Equal(1.0, found.SuspensionDamping[wheel, wheel] / damp, 4e-3);
        }
    }

    private static string Garage(string file) => File.ReadAllText(Path.Combine(Checkout.Root, "examples", "garage", file));

    private static Car Car(string file) => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", file)).Value!;

    private static (Twin Twin, Car Read) Read(string file, string text, string rearSpring)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(Path.Combine(folder.Root, file), text);
        var loaded = CarFile.Load(Path.Combine(folder.Root, file));
        Assert.Empty(loaded.Refusals);
        var car = loaded.Value!;
        var twin = new Twin
        {
            Car = TwinScales.Of(car, Scaled),
            Factors =
            [
                .. Scaled.Select((f, k) => new TwinFactor(
                    (TwinScale)k, new Bracket(f, f - 0.03, f + 0.03), 0.9, (TwinScale)k == TwinScale.RearSpring ? rearSpring : "")),
            ],
            Numbers = [],
            Steps = 1,
            Passes = 1,
            Misfit = 1.0,
        };
        var bytes = DriveTwinWords.Variant(twin, new LoadedCar(car.Name, car, car.LoadStates[0]), file);
        File.WriteAllBytes(Path.Combine(folder.Root, "as-driven.yaml"), bytes);
        var read = CarFile.Load(Path.Combine(folder.Root, "as-driven.yaml"));
        Assert.True(read.Refusals.Count == 0, $"{string.Join('\n', read.Refusals.Select(r => r.Message))}\n{Encoding.UTF8.GetString(bytes)}");
        return (twin, read.Value!);
    }
}
