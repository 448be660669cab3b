using CsCheck;
using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Parts;
using Heaveline.Models;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files.Parts;

public class FittedVariantTests
{
    private static readonly PartsList Village = PartsFile.Load(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml")).Value!;

    private static readonly PartsList Shed = PartsFile.Load(Path.Combine(Checkout.Root, "examples", "parts", "shed.csv")).Value!;

    [Fact]
    public void A_number_of_a_list_is_written_in_the_words_of_the_list()
    {
        const string Text = """
            parts: Shed
            currency: EUR
            springs:
              - {part: Coil, price: 40, fits: rear, rate: 195 lb/in ± 5 %, free-length: 15.25 in ± 0.0625 in, block-length: 4 in}
            stops:
              - {part: Rubber, price: 9, length: 2 in ± 1 mm, curve: [[10 mm, 300 N], [25 mm, 1500 N]]}
            bars:
              - {part: Bar, price: 90, fits: front, holes: [{hole: inner, wheel-rate: 60 lb/in}, {hole: outer, wheel-rate: 50 lb/in ± 2 lb/in}]}
            """;
        var list = PartsFile.Read(new SourceText("shed.yaml", Text)).Value!;
        var before = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"));
        PartOption Option(string name) => list.Parts.SelectMany(part => part.Options).Single(option => option.Name == name);
        var fitted = Assert.IsType<Fitted>(Fitting.Of(before.Value!,
        [
            new(PartPlace.RearSpring, Option("Coil")), new(PartPlace.FrontBar, Option("Bar at the outer hole")),
            new(PartPlace.RearStop, Option("Rubber")),
        ]));
        var variant = FittedVariant.Of(fitted, before, "Shed", "fern-saloon.yaml");
        string[] words =
        [
            "rate: 195 lb/in ± 5 %", "free-length: 15.25 in ± 0.0625 in", "block-length: 4 in", "wheel-rate: 50 lb/in ± 2 lb/in",
            "length: 2 in ± 1 mm",
        ];
        Assert.All(words, one => Assert.Contains(one, variant, StringComparison.Ordinal));
    }

    // The car as it is, with the lengths of its springs, on bought springs, and one whose axle is solid and whose bar is given by its size.
    [Theory]
    [InlineData("fern-saloon")]
    [InlineData("fern-saloon-measured")]
    [InlineData("fern-saloon-bought")]
    [InlineData("drover-van")]
    [InlineData("sprig-kit-car")]
    public void Any_parts_fitted_and_written_are_read_and_stand_and_move_alike(string name)
    {
        using var folder = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage")))
        {
            File.Copy(file, Path.Combine(folder.Root, Path.GetFileName(file)));
        }

        var before = CarFile.Load(Path.Combine(folder.Root, $"{name}.yaml"));
        PartOption[][] options =
        [
            .. PartPlaces.All.Select(place => Village.For(place).Concat(Shed.For(place)).SelectMany(part => part.Options)
                .Append(place.Sort() == PartSort.Bar ? BarPart.Without.Options[0] : null).OfType<PartOption>()
                .Where(option => Fitting.Of(before.Value!, [new(place, option)]) is Fitted).ToArray()),
        ];
        var fittedAny = 0;
        Gen.Int[-1, 1000].Array[PartPlaces.All.Count].Sample(picks =>
        {
            FittedPart[] parts =
            [
                .. PartPlaces.All.Index().Where(p => picks[p.Index] >= 0 && options[p.Index].Length > 0)
                    .Select(p => new FittedPart(p.Item, options[p.Index][picks[p.Index] % options[p.Index].Length])),
            ];
            if (parts.Length == 0 || Fitting.Of(before.Value!, parts) is not Fitted fitted)
            {
                return;
            }

            try
            {
                _ = RideModel.Of(fitted.Car);
            }
            catch (RefusedValueException)
            {
                // Parts of a saloon under another car: it cannot stand on them, and no file may say so.
                return;
            }

            fittedAny++;
            var text = FittedVariant.Of(fitted, before, "fitted", $"{name}.yaml");
            var reading = CarFile.Load(folder.Write($"fitted-{Guid.NewGuid():N}.yaml", text));
            Assert.True(reading.Value is not null, $"{text}\n{reading.Format()}");
            Alike(fitted.Car, reading.Value, text);
        }, iter: 40, threads: 1);
        Assert.True(fittedAny >= 10, $"{fittedAny} of 40");
    }

    [Fact]
    public void The_error_of_a_part_keeps_its_name()
    {
        var before = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon-measured.yaml"));
        PartOption Named(string part) => Village.Parts.Single(p => p.Name == part).Options[0];
        var fitted = Assert.IsType<Fitted>(Fitting.Of(
            before.Value!,
            [new(PartPlace.RearSpring, Named("Larch R-480")) { Packing = new(0.002) }, new(PartPlace.RearDamper, Named("Wren W3"))]));
        using var folder = new TemporaryFolder();
        foreach (var file in new[] { "fern-saloon.yaml", "fern-saloon-measured.yaml" })
        {
            File.Copy(Path.Combine(Checkout.Root, "examples", "garage", file), Path.Combine(folder.Root, file));
        }

        var text = FittedVariant.Of(fitted, before, "village rear", "fern-saloon-measured.yaml");
        Assert.Equal(
            """
            variant: village rear
            of: fern-saloon-measured.yaml
            note: "Fitted: Larch R-480 as rear spring, Wren W3 at click 2 as rear damper."
            change:
              rear:
                bought-spring:
                  rate: 48 N/mm ± 3 %
                  free-length: 292 mm ± 2 mm
                  block-length: 95 mm
                  seat-diameter: 100 mm
                  seat: 2 mm
                  tester: Larch R-480 rate
            """,
            text[..text.IndexOf("\n    damper:", StringComparison.Ordinal)]);
        var car = CarFile.Load(folder.Write("village-rear.yaml", text)).Value!;
        Assert.Equal("Larch R-480 rate", Assert.IsType<LinearSpring>(car.Rear.Spring.Law).Rate.Doubt.Shared);
        Assert.Equal("Wren W3 forces", Assert.IsType<TableDamper>(car.Rear.Damper.Law).Factor.Doubt.Shared);
        Assert.Equal(0.05, Assert.IsType<TableDamper>(car.Rear.Damper.Law).Factor.Doubt.HalfWidth, 1e-12);
        Assert.Equal((130.0, 110.0), (car.Rear.Damper.GasForce.Si, car.Rear.Damper.WeighedGasForce!.Value.Si));
        Assert.Equal(0.002, car.Rear.Spring.Swap!.Seat.Si, 1e-12);
    }

    [Fact]
    public void A_reading_of_another_car_is_not_written_on()
    {
        var before = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml"));
        var other = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon-measured.yaml"));
        var fitted = Assert.IsType<Fitted>(Fitting.Of(before.Value!, [new(PartPlace.FrontBar, BarPart.Without.Options[0])]));
        Assert.Throws<ArgumentException>(() => FittedVariant.Of(fitted, other, "no", "fern-saloon.yaml"));
    }

    private static void Alike(Car fitted, Car read, string text)
    {
        var (one, other) = (RideModel.Of(fitted), RideModel.Of(read));
        for (var i = 0; i < 4; i++)
        {
            Near(one.Trim.Travel[i], other.Trim.Travel[i], 1e-8, text);
            Near(one.Tangent.WheelRate[i], other.Tangent.WheelRate[i], 1e-3, text);
            foreach (var velocity in new[] { -1.2, -0.3, -0.05, 0.05, 0.3, 1.2 })
            {
                Near(Force(fitted.Axles[i / 2].Damper, velocity), Force(read.Axles[i / 2].Damper, velocity), 1e-6, text);
            }
        }

        foreach (var (axle, again) in fitted.Axles.Zip(read.Axles))
        {
            Near(axle.AntiRollBar.Si, again.AntiRollBar.Si, 1e-5, text);
            Near(axle.UnsprungMass.Si, again.UnsprungMass.Si, 1e-8, text);
            Near(axle.BumpStop?.Clearance.Si ?? 0.0, again.BumpStop?.Clearance.Si ?? 0.0, 1e-10, text);
            Near(axle.BumpStop?.SolidAfter?.Si ?? 0.0, again.BumpStop?.SolidAfter?.Si ?? 0.0, 1e-10, text);
            Near(axle.BumpStop?.Table?.ForceAt(0.02) ?? 0.0, again.BumpStop?.Table?.ForceAt(0.02) ?? 0.0, 1e-5, text);
            Near(axle.Tyre.Rate.Si, again.Tyre.Rate.Si, 1e-5, text);
            Near(axle.Spring.BlockLength?.Si ?? 0.0, again.Spring.BlockLength?.Si ?? 0.0, 1e-10, text);
            Near(axle.RollInertia?.Si ?? 0.0, again.RollInertia?.Si ?? 0.0, 1e-8, text);
        }

        Near((fitted.Interconnection as ElasticLink)?.Rate.Si ?? 0.0, (read.Interconnection as ElasticLink)?.Rate.Si ?? 0.0, 1e-5, text);
    }

    private static double Force(Damper damper, double velocity) => damper.Law is TableDamper table ? table.Whole.ForceAt(velocity) : 0.0;

    private static void Near(double expected, double actual, double tolerance, string text) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"{expected:R} and {actual:R}:\n{text}");
}
