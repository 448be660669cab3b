using Heaveline.Files;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Tests.Files;

/// <summary>A record's own limits, and how many of them are told at once.</summary>
public class RecordTrialTests
{
    private static readonly Key<Amount<Mass>> Weight = Key.Required("total", "Mass of the whole.", Kind.Amount<Mass>(), "12 kg", property: "Mass");
    private static readonly Key<Amount<Length>> Inner = Key.Required("inner", "Inner diameter.", Kind.Amount<Length>(), "90 mm");
    private static readonly Key<Amount<Length>> Outer = Key.Required("outer", "Outer diameter.", Kind.Amount<Length>(), "110 mm");
    private static readonly Key<Coil> Coil = Key.Required("coil", "The coil.", Sample.Spring);
    private static readonly Shape<string> Seat = new Shape("seat", "A spring seat.", Weight, Inner, Outer, Coil).As(Make);

    [Fact]
    public void Limits_of_the_outer_record_are_told_when_an_inner_value_is_refused() =>
        Assert.Equal(
            ["total is -2 kg; it must be above 0 kg.", "coil rate: 20 mm is a length; a spring rate is wanted, e.g. 20 N/mm."],
            Messages("total: -2 kg\ninner: 50 mm\nouter: 60 mm\ncoil: {rate: 20 mm, free-length: 1 m}"));

    [Fact]
    public void A_key_named_otherwise_than_its_property_is_found() =>
        Assert.Equal(
            ["total is -2 lb; it must be above 0 lb."],
            Messages("total: -2 lb\ninner: 50 mm\nouter: 60 mm\ncoil: {rate: 20 N/mm, free-length: 1 m}"));

    [Fact]
    public void A_limit_between_two_values_is_told_when_both_are_the_users() =>
        Assert.Equal(
            ["outer is 40 mm; it must be above 0.05 m."],
            Messages("total: 2 kg\ninner: 50 mm\nouter: 40 mm\ncoil: {rate: 20 N/mm, free-length: 1 m}"));

    [Fact]
    public void A_limit_against_an_example_is_not_told() =>
        Assert.Equal(
            ["inner: 50 kg is a mass; a length is wanted, e.g. 50 mm."],
            Messages("total: 2 kg\ninner: 50 kg\nouter: 40 mm\ncoil: {rate: 20 N/mm, free-length: 1 m}"));

    [Fact]
    public void A_limit_on_something_that_is_no_key_is_told_at_the_group()
    {
        var shape = new Shape("s", "m", Weight).As<string>(f => throw new RefusedValueException("balance", "3", "below 2", "Check the masses."));
        var refusal = Assert.Single(YamlReading.Read(new SourceText("s.yaml", "total: 2 kg"), shape).Refusals);
        Assert.Equal(
            (1, 1, 5, "balance is 3; it must be below 2.", "Check the masses."),
            (refusal.Line, refusal.Column, refusal.Length, refusal.Message, refusal.Advice));
    }

    [Fact]
    public void Every_example_of_a_shape_is_sound() =>
        Assert.All(
            [.. Sample.Bench.Layout.Keys, .. Sample.Spring.Layout.Keys, .. Sample.Stock.Layout.Keys, .. Seat.Layout.Keys],
            key => Assert.NotNull(key.Sample()));

    private static string[] Messages(string text) => [.. YamlReading.Read(new SourceText("seat.yaml", text), Seat).Refusals.Select(r => r.Message)];

    private static string Make(Fields f)
    {
        Checked.Positive(f.Required(Weight), "Weigh it.", "Mass");
        var (inner, outer) = (f.Required(Inner), f.Required(Outer));
        return outer.Si > inner.Si
            ? "seat"
            : throw new RefusedValueException("outer", outer.ToString(), $"above {inner}", "Measure both again.") { Property = "Outer" };
    }
}
