using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;

namespace Heaveline.Tests.Files;

public sealed class VariantTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public VariantTests() => folder.Write("base.yaml", TextCar.Sound);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_variant_changes_its_keys_and_keeps_the_rest()
    {
        var reading = Load(
            "soft.yaml",
            "variant: softer front\nof: base.yaml\nnote: Tried in May.\nchange:\n  front: {spring: {rate: 18 N/mm}}\n  loads:\n    boot: [{what: "
            + "bags, mass: 60 kg, behind-front-axle: 2.6 m, height: 0.7 m}]\n");
        Assert.Equal("", reading.Format());
        Assert.Equal(("Test car, softer front", "Tried in May."), (reading.Value!.Name, reading.Value.Note));
        Assert.Equal(18000.0, reading.Value.Front.Spring.Law.RateAtReference(0.0));
        Assert.Equal(0.9, reading.Value.Front.Spring.MotionRatio.AtReference.Si);
        Assert.Equal(["driver", "boot"], reading.Value.LoadStates.Select(load => load.Name));
        Assert.Equal(17000.0, reading.Value.Rear.Spring.Law.RateAtReference(0.0));
    }

    [Fact]
    public void A_refusal_points_into_the_file_that_holds_the_value()
    {
        folder.Write("bad.yaml", TextCar.With("unsprung-mass: 60 kg", "unsprung-mass: -60 kg"));
        var path = folder.Write(
            "soft.yaml", "variant: softer front\nof: bad.yaml\nchange:\n  front: {spring: {rate: -18 N/mm}}\n  rear: {sprong: 2}\n");
        var reading = CarFile.Load(path);
        Assert.Equal(
            [
                (path, 4, 26, "front spring rate is -18 N/mm; it must be above 0 N/mm."),
                (path, 5, 10, "\"sprong\" is not a key of rear."),
                (Path.Combine(folder.Root, "bad.yaml"), 16, 18, "rear unsprung mass is -60 kg; it must be above 0 kg."),
            ],
            reading.Refusals.Select(r => (r.File, r.Line, r.Column, r.Message)).ToArray());
        Assert.Contains("\n 16 |   unsprung-mass: -60 kg\n", reading.Format(), StringComparison.Ordinal);
        Assert.Contains("\n 4 |   front: {spring: {rate: -18 N/mm}}\n", reading.Format(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_warning_points_into_the_variant()
    {
        var reading = Load("soft.yaml", "variant: stiff\nof: base.yaml\nchange:\n  front: {tyre: {rate: 40 N/mm}}\n");
        var warning = Assert.Single(reading.Warnings);
        Assert.Equal((Path.Combine(folder.Root, "soft.yaml"), 4, 24), (warning.File, warning.Line, warning.Column));
    }

    [Fact]
    public void One_way_to_write_a_value_replaces_another()
    {
        var reading = Load(
            "table.yaml",
            "variant: table\nof: base.yaml\nchange:\n  front:\n    spring: {table: [[0 mm, 0 N], [200 mm, 4400 N]]}\n    damper: {bump: "
            + "[[0.1 m/s, 100 N]], rebound: [[0.1 m/s, 200 N]], damper-per-wheel: 0.9}\n");
        Assert.Equal("", reading.Format());
        Assert.IsType<TableSpring>(reading.Value!.Front.Spring.Law);
        Assert.IsType<TableDamper>(reading.Value.Front.Damper.Law);
    }

    [Fact]
    public void A_key_with_a_tilde_is_taken_out()
    {
        var reading = Load(
            "bare.yaml", "variant: bare\nof: base.yaml\nchange:\n  front: {bump-stop: ~, spring: {spring-per-wheel: ~, wheel-rate: 17 N/mm}}\n");
        Assert.Equal("", reading.Format());
        Assert.Null(reading.Value!.Front.BumpStop);
        Assert.Equal(MotionRatio.One, reading.Value.Front.Spring.MotionRatio);
        Assert.Equal(
            "interconnection has no value; a group of keys (elastic, fluid) is wanted.",
            Assert.Single(Load("none.yaml", "variant: none\nof: base.yaml\nchange: {interconnection: ~}\n").Refusals).Message);
    }

    [Fact]
    public void Eight_variants_lie_over_one_car_and_a_ninth_is_refused()
    {
        for (var i = 1; i <= 9; i++)
        {
            folder.Write($"v{i}.yaml", $"variant: v{i}\nof: {(i == 1 ? "base" : $"v{i - 1}")}.yaml\nchange: {{wheelbase: 2.{50 + i} m}}\n");
        }

        var eight = CarFile.Load(Path.Combine(folder.Root, "v8.yaml"));
        Assert.Equal("", eight.Format());
        Assert.Equal(2.58, eight.Value!.Wheelbase.Si);
        Assert.Equal("Test car, v1, v2, v3, v4, v5, v6, v7, v8", eight.Value.Name);
        Assert.Equal(9, eight.Sources.Count);
        var refusal = Assert.Single(CarFile.Load(Path.Combine(folder.Root, "v9.yaml")).Refusals);
        Assert.Equal((2, 5, "of makes a chain of 9 variants; it must have 8 or fewer."), (refusal.Line, refusal.Column, refusal.Message));
    }

    [Fact]
    public void A_chain_that_comes_back_is_refused()
    {
        folder.Write("a.yaml", "variant: a\nof: b.yaml\nchange: {wheelbase: 2.5 m}\n");
        folder.Write("b.yaml", "variant: b\nof: ./a.yaml\nchange: {wheelbase: 2.5 m}\n");
        var refusal = Assert.Single(CarFile.Load(Path.Combine(folder.Root, "a.yaml")).Refusals);
        Assert.Equal(
            (Path.Combine(folder.Root, "b.yaml"), 2, 5, "of is ./a.yaml, which is a variant of this file again."),
            (refusal.File, refusal.Line, refusal.Column, refusal.Message));
    }

    [Theory]
    [InlineData("variant: v\nof: ../other.yaml\nchange: {wheelbase: 2 m}\n", 2, 5, "of is ../other.yaml, which leads out of the folder.")]
    [InlineData("variant: v\nof: /etc/passwd\nchange: {wheelbase: 2 m}\n", 2, 5, "of is /etc/passwd, which is not a name relative to this file.")]
    [InlineData("variant: v\nof: link.yaml\nchange: {wheelbase: 2 m}\n", 2, 5, "of is link.yaml, which is a link that leads out of the folder.")]
    [InlineData("variant: v\nof: missing.yaml\nchange: {wheelbase: 2 m}\n", 2, 5, "of is missing.yaml: there is no such file.")]
    [InlineData("variant: v\nof: base.yaml\n", 1, 1, "the file has no change.")]
    [InlineData("variant: v\nof: base.yaml\nchange: 3\n", 3, 9, "change is a single value; a group with the changed keys of the car file is wanted.")]
    [InlineData("variant: v\nof: base.yaml\nwheelbase: 3 m\nchange: {wheelbase: 2 m}\n", 3, 1, "\"wheelbase\" is not a key of the file.")]
    public void A_variant_that_cannot_be_put_together_is_refused(string text, int line, int column, string message)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(Path.Combine(folder.Root, "link.yaml"), "/etc/hostname");
        }
        else if (text.Contains("link", StringComparison.Ordinal))
        {
            Assert.Skip("links need a right of their own on Windows");
        }

        var refusal = Assert.Single(Load("v.yaml", text).Refusals);
        Assert.Equal((line, column, message), (refusal.Line, refusal.Column, refusal.Message));
    }

    [Fact]
    public void A_variant_without_a_folder_is_refused() =>
        Assert.Equal(
            "of names base.yaml, and this text lies in no folder.",
            Assert.Single(TextCar.Read("variant: v\nof: base.yaml\nchange: {wheelbase: 2 m}\n").Refusals).Message);

    [Fact]
    public void A_base_in_a_wider_garage_is_found()
    {
        var path = folder.Write("trials/soft.yaml", "variant: soft\nof: ../base.yaml\nchange: {wheelbase: 2.6 m}\n");
        Assert.Equal(2.6, CarFile.Load(path, folder.Root).Value!.Wheelbase.Si);
        Assert.Single(CarFile.Load(path).Refusals);
    }

    [Fact]
    public void A_file_that_is_not_there_is_refused() =>
        Assert.Equal("there is no such file.", Assert.Single(CarFile.Load(Path.Combine(folder.Root, "none.yaml")).Refusals).Message);

    private Reading<Car> Load(string name, string text) => CarFile.Load(folder.Write(name, text));
}
