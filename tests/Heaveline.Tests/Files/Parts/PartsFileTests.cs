using CsCheck;
using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Parts;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Tests.House;
using Heaveline.Tests.Parts;

namespace Heaveline.Tests.Files.Parts;

public class PartsFileTests
{
    private const string Sound =
        """
        parts: shelf
        currency: EUR
        springs:
          - {part: one, price: 80, rate: 20 N/mm, free-length: 380 mm, block-length: 90 mm}
          - {part: two, price: 80, rate: 24 N/mm}
          - {part: three, price: 80, rate: 22 N/mm}
        dampers:
          - part: clicking
            price: 100
            clicks:
              - {click: 1, bump: [[0.1 m/s, 100 N], [0.5 m/s, 300 N]], rebound: [[0.1 m/s, 200 N], [0.5 m/s, 600 N]]}
              - {click: 5, bump: [[0.1 m/s, 150 N], [0.5 m/s, 400 N]], rebound: [[0.1 m/s, 300 N], [0.5 m/s, 900 N]]}
              - {click: 9, bump: [[0.1 m/s, 200 N], [0.5 m/s, 500 N]], rebound: [[0.1 m/s, 400 N], [0.5 m/s, 1200 N]]}
        """;

    private static readonly Gen<Amount<Length>?> Lengths = Gen.Select(Gen.Double[0.05, 0.6], Gen.Double[0.0, 0.01], Gen.Bool)
        .Select((si, doubt, given) => given ? new Amount<Length>(si, new Doubt(doubt)) : (Amount<Length>?)null);

    private static readonly Gen<Part> Parts = Gen.OneOf(
        Gen.Select(Gen.Double[8e3, 90e3], Gen.Double[0.0, 2e3], Lengths, Lengths).Select((rate, doubt, free, seat) => (Part)new CoilPart
        {
            Name = "coil",
            Law = new LinearSpring { Rate = new(rate, new Doubt(doubt)), Origin = "as bought" },
            FreeLength = free,
            BlockLength = free is { } length ? new Amount<Length>(length.Si / 3.0) : null,
            SeatDiameter = seat,
        }),
        Gen.Select(Gen.Double[20.0, 300.0].Array[8], Gen.Int[1, 6], Lengths).Select((force, step, stroke) => (Part)new DamperPart
        {
            Name = "damper",
            Clicks =
            [
                new(1, Shelf.Table(force[0], force[0] + force[1], force[2], force[2] + force[3])),
                new(1 + step, Shelf.Table(force[4], force[4] + force[5], force[6], force[6] + force[7])),
            ],
            GasForce = new Amount<Force>(force[0]),
            Stroke = stroke,
        }),
        Gen.Double[0.0, 30e3].Array[1, 3].Select(rates => (Part)new BarPart
        {
            Name = "bar", Holes = [.. rates.Select((rate, i) => new BarHole($"hole {i}", new(rate)))],
        }),
        Gen.Select(Gen.Double[0.03, 0.08], Gen.Double[50.0, 900.0], Gen.Double[0.5, 1.1]).Select((length, force, ratio) => (Part)new StopPart
        {
            Name = "stop",
            Length = new(length),
            Curve = new ForceTable([0.0, 0.3 * length, 0.7 * length], [0.0, force, 9.0 * force]),
            SolidAfter = new Amount<Length>(0.75 * length),
            PerWheel = new Amount<Plain>(ratio),
            Cuts = [new(0.0), new(0.2 * length)],
        }),
        Gen.Select(Gen.Double[120e3, 400e3], Gen.Double[-3.0, 3.0], Gen.Double[-0.02, 0.02]).Select((rate, mass, radius) => (Part)new TyrePart
        {
            Name = "tyre",
            Tyre = new Tyre { Rate = new(rate), Damping = new(60.0), ContactLength = new(0.12) },
            Unsprung = new(mass),
            RadiusChange = new Amount<Length>(radius),
        }),
        Gen.Select(Gen.Double[1e3, 40e3], Gen.Double[0.3, 1.2]).Select((rate, ratio) => (Part)new LinkPart
        {
            Name = "link", Link = new ElasticLink { Rate = new(rate), RearRatio = new(-ratio) },
        }));

    [Fact]
    public void What_was_written_of_any_parts_is_read_again_and_fits_alike() =>
        Gen.Select(Parts.Array[1, 12], Gen.Int[0, 100000].Array[12], Gen.Int[0, 2].Array[12]).Sample((drawn, prices, ends) =>
        {
            Part[] parts = [.. drawn.Select((part, i) => part with
            {
                Name = $"{part.Name} {i}",
                Price = new Money(prices[i] / 100m, "EUR"),
                Only = part is LinkPart || ends[i] == 2 ? null : (AxleEnd)ends[i],
                Stock = ends[i] == 0 ? "on the shelf" : null,
                Pieces = ends[i] == 1 ? 2 : null,
            }).OrderBy(part => part.Sort)];
            var list = new PartsList { Name = "drawn", Currency = "EUR", Parts = parts };
            var reading = PartsFile.Read(new SourceText("drawn.yaml", PartsText.Of(list)));
            Assert.True(reading.Value is not null, reading.Format());
            foreach (var (written, read) in parts.Zip(reading.Value.Parts))
            {
                Assert.Equal(
                    (written.Name, written.Price, written.Stock, written.Only, written.Pieces),
                    (read.Name, read.Price, read.Stock, read.Only, read.Pieces));
                Assert.Equal(written.Options.Select(option => option.Name), read.Options.Select(option => option.Name));
                foreach (var place in PartPlaces.Of(written.Sort).Where(written.Goes))
                {
                    foreach (var (one, other) in written.Options.Zip(read.Options))
                    {
                        Alike(Fitting.Of(Shelf.Car, [new(place, one)]), Fitting.Of(Shelf.Car, [new(place, other)]));
                    }
                }
            }
        }, iter: 60);

    [Fact]
    public void The_village_list_is_read_whole()
    {
        var list = PartsFile.Load(Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml"));
        Assert.True(list.Value is not null && list.Warnings.Count == 0, list.Format());
        Assert.Equal([8, 3, 2, 2, 1, 1], list.Value.Parts.GroupBy(part => part.Sort).Select(sort => sort.Count()));
        Assert.Equal(new Money(148m, "EUR"), list.Value.Parts.Single(part => part.Name == "Wren W3").Price);
        var coil = Assert.IsType<CoilPart>(list.Value.Parts.Single(part => part.Name == "Larch R-380"));
        Assert.Equal(38e3, Assert.IsType<LinearSpring>(coil.Law).Rate.Si, 1e-6);
        Assert.NotNull(Assert.IsType<LinearSpring>(coil.Law).Dimensions);
    }

    [Fact]
    public void Labour_is_money_by_the_price_of_an_hour_and_time_alone_without_one()
    {
        var text = Sound.Replace("price: 80, rate: 24", "price: 80, labour: 90 min, rate: 24", StringComparison.Ordinal);
        var hours = PartsFile.Read(new SourceText("shelf.yaml", text));
        Assert.True(hours.Value is not null, hours.Format());
        var two = hours.Value.Parts.Single(part => part.Name == "two");
        Assert.Equal((5400.0, (Money?)null), (two.Labour!.Value.Si, two.FittingPrice));
        Assert.Contains(
            hours.Warnings, warning => warning.Message.Contains("two has labour, and the list has no hourly-price", StringComparison.Ordinal));
        var paid = PartsFile.Read(new SourceText(
            "shelf.yaml", text.Replace("currency: EUR", "currency: EUR\nhourly-price: 62.50", StringComparison.Ordinal)));
        Assert.Equal(new Money(62.50m, "EUR"), paid.Value!.HourlyPrice);
        // 1.5 h at 62.50 EUR.
        Assert.Equal(new Money(93.75m, "EUR"), paid.Value.Parts.Single(part => part.Name == "two").FittingPrice);
        Assert.Equal(new Money(253.75m, "EUR"), paid.Value.Parts.Single(part => part.Name == "two").CostOn(VehicleKind.Car));
        Assert.Contains(paid.Warnings, warning => warning.Message.Contains("one has no labour, and others of the list do", StringComparison.Ordinal));
        Assert.Null(PartsFile.Read(new SourceText("free.yaml", "parts: free\nhourly-price: 60\nsprings:\n  - {part: one, rate: 20 N/mm}\n")).Value);
    }

    [Theory]
    [InlineData("price: 80, rate: 24", "price: 80 EUR, rate: 24", "\"80 EUR\" is no price")]
    [InlineData("price: 80, rate: 24", "price: 80, labour: 1.5, rate: 24", "labour")]
    [InlineData("price: 80, rate: 24", "price: 80, labour: -1 h, rate: 24", "labour")]
    [InlineData("price: 80, rate: 24", "price: 80, labour: 1 h ± 10 %, rate: 24", "labour")]
    [InlineData("price: 80, rate: 24", "price: 80, labour: 1.5 mm, rate: 24", "labour")]
    [InlineData("currency: EUR\n", "currency: EUR\nhourly-price: 60 EUR\n", "\"60 EUR\" is no price")]
    [InlineData("price: 80, rate: 24", "price: -1, rate: 24", "is no price")]
    [InlineData("currency: EUR\n", "", "gives prices in no currency")]
    [InlineData("part: two", "part: one", "one stands in the list already, in line 4")]
    [InlineData("block-length: 90 mm", "block-length: 390 mm", "it must be below free-length")]
    [InlineData("{part: two, price: 80, rate: 24 N/mm}", "{part: two, price: 80}", "has no rate")]
    [InlineData("rate: 24 N/mm", "rate: 24 N/mm, table: [[0 mm, 0 N], [10 mm, 240 N]]", "beside a table")]
    [InlineData("click: 5", "click: 1", "has click 1 after click 1; they must rise")]
    [InlineData("[0.5 m/s, 400 N]", "[0.5 m/s, 140 N]", "it must be at least the 150 N of the row before")]
    [InlineData("rate: 22 N/mm", "rate: 22 N/mm, fits: middle", "fits")]
    [InlineData("  - {part: one", "  - {aprt: one", "aprt")]
    public void What_is_wrong_is_refused_at_its_place(string old, string slip, string message)
    {
        Assert.Contains(old, Sound, StringComparison.Ordinal);
        Assert.NotNull(PartsFile.Read(new SourceText("shelf.yaml", Sound)).Value);
        var text = Sound.Replace(old, slip, StringComparison.Ordinal);
        var reading = PartsFile.Read(new SourceText("shelf.yaml", text));
        Assert.Null(reading.Value);
        Assert.Contains(reading.Refusals, refusal => refusal.Message.Contains(message, StringComparison.Ordinal));
        Assert.All(reading.Refusals, refusal => Assert.InRange(refusal.Line, 1, text.Split('\n').Length));
    }

    [Theory]
    [InlineData("rate: 22 N/mm", "rate: 220 N/mm", "three has 220 N/mm, ten times those beside it, which lie about 22 N/mm.", 6)]
    [InlineData("rate: 22 N/mm", "rate: 2.2 N/mm", "three has 2.2 N/mm, a tenth of those beside it", 6)]
    [InlineData("block-length: 90 mm", "block-length: 345 mm", "35 mm are less than a car's load and its bump travel press it together", 4)]
    [InlineData("price: 80, rate: 24", "rate: 24", "two has no price", 5)]
    [InlineData("price: 80, rate: 24", "price: 0, rate: 24", "two costs nothing, and others of the list do not.", 5)]
    [InlineData("rate: 24 N/mm", "rate: 24 N/mm, coil: {wire: 13 mm, mean-diameter: 120 mm, active-coils: 0.7}", "a tenth of what its wire gives", 5)]
    [InlineData("rate: 24 N/mm", "rate: 24 N/mm, coil: {wire: 13 mm, mean-diameter: 120 mm, active-coils: 4}", "far from what its wire gives", 5)]
    [InlineData("[0.5 m/s, 400 N]], rebound: [[0.1 m/s, 300 N], [0.5 m/s, 900 N]]",
        "[0.5 m/s, 600 N]], rebound: [[0.1 m/s, 300 N], [0.5 m/s, 1500 N]]",
        "clicking is harder at click 5 than at both clicks beside it.", 10)]
    [InlineData("[0.5 m/s, 500 N]", "[0.5 m/s, 50000 N]", "this row of bump rises", 13)]
    public void Likely_slips_are_told_at_their_line(string old, string slip, string message, int line)
    {
        Assert.Empty(PartsFile.Read(new SourceText("shelf.yaml", Sound)).Warnings);
        Assert.Contains(old, Sound, StringComparison.Ordinal);
        var reading = PartsFile.Read(new SourceText("shelf.yaml", Sound.Replace(old, slip, StringComparison.Ordinal)));
        Assert.True(reading.Value is not null, reading.Format());
        var told = Assert.Single(reading.Warnings, warning => warning.Message.Contains(message, StringComparison.Ordinal));
        Assert.Equal(line, told.Line);
    }

    [Fact]
    public void A_wire_beside_a_rate_tells_the_stress_and_leaves_the_doubt_to_the_rate()
    {
        var text = Sound.Replace(
            "rate: 24 N/mm",
            "rate: 24 N/mm ± 3 %, coil: {wire: 12.5 mm ± 1 %, mean-diameter: 120 mm, active-coils: 5.8}",
            StringComparison.Ordinal);
        var coil = Assert.IsType<CoilPart>(PartsFile.Read(new SourceText("shelf.yaml", text)).Value!.Parts[1]);
        var law = Assert.IsType<LinearSpring>(coil.Law);
        Assert.Equal((24e3, 720.0), (law.Rate.Si, Math.Round(law.Rate.Doubt.HalfWidth, 6)));
        Assert.False(Assert.IsType<CoilDimensions>(law.Dimensions).Wire.Doubt.IsStated);
    }

    private static void Alike(FittingResult one, FittingResult other)
    {
        if (one is Misfit misfit)
        {
            Assert.Equal(misfit, other);
            return;
        }

        var (fitted, again) = (Assert.IsType<Fitted>(one), Assert.IsType<Fitted>(other));
        Assert.Equal(fitted.Car, again.Car);
        Assert.Equal(fitted.Cost, again.Cost);
        Assert.Equal(fitted.Packers, again.Packers);
        Assert.Equal(fitted.Remarks, again.Remarks);
    }
}
