using System.Collections.Immutable;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>Everything that a reader has chosen on the pass page: what its address holds.</summary>
public sealed record PassState
{
    /// <summary>Address key of the speed, km/h.</summary>
    public const string Speed = CurrentCar.SpeedKey;

    /// <summary>Address key of the obstacle's height, mm.</summary>
    public const string Height = CurrentCar.HeightKey;

    /// <summary>Speed when the address names none, km/h.</summary>
    public const double UsualSpeed = 40.0;

    /// <summary>Address key of how springs are set.</summary>
    internal const string Springs = CurrentCar.SpringsKey;

    /// <summary>Address key of what a longer wheelbase does to the body.</summary>
    internal const string Inertia = CurrentCar.InertiaKey;

    private const string Frequencies = "frequencies";
    private const string Grows = "grows";

    /// <summary>Name of the car file.</summary>
    public required string Car { get; init; }

    /// <summary>Name of the load state; null: the first one of the car's own.</summary>
    public string? Load { get; init; }

    /// <summary>Name of the road.</summary>
    public string Road { get; init; } = Choices.Road.Usual!;

    /// <summary>Name of the car that is the former state; null: the car as described.</summary>
    public string? Beside { get; init; }

    /// <summary>Whether springs are set by their axle's ride frequency.</summary>
    public bool AsFrequencies { get; init; }

    /// <summary>Whether the pitch inertia grows with the wheelbase.</summary>
    public bool InertiaGrows { get; init; }

    /// <summary>What has been moved, by the setting's key; what stands as described is not in it.</summary>
    public ImmutableSortedDictionary<string, double> Values { get; init; } = ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal);

    /// <summary>The trials that are pinned, in their order.</summary>
    public IReadOnlyList<PassPin> Pins { get; init; } = [];

    /// <summary>What an address says of a setting and nobody can read as a number, by the setting's key, as it stands there.</summary>
    public ImmutableSortedDictionary<string, string> Unread { get; init; } = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>Speed, km/h.</summary>
    public double KilometresPerHour => Values.GetValueOrDefault(Speed, UsualSpeed);

    /// <summary>Car, load, road and speed as a study reads them.</summary>
    internal Given Words => new(
    [
        (Choices.Car.Name, Car), (Choices.Load.Name, Load), (Choices.Road.Name, Road),
        (Choices.Speed.Name, FormattableString.Invariant($"{KilometresPerHour:R} km/h")),
    ]);

    /// <summary>Keys of everything that can be moved.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. CurrentCar.TrialKeys, Speed, Height];

    /// <summary>The same with one value moved; null puts it back as described.</summary>
    public PassState With(string key, double? value) =>
        this with { Values = value is { } v ? Values.SetItem(key, v) : Values.Remove(key), Unread = Unread.Remove(key) };

    /// <summary>Whether two states make the same cars on the same road; how sliders are marked does not matter.</summary>
    public bool IsSameAs(PassState other) => Query == other.Query;

    /// <summary>What an address says; what it does not say stands as usual, and a number that cannot be read is kept as it is written.</summary>
    /// <param name="query">The query with or without its question mark.</param>
    /// <param name="usualCar">The car when none is named.</param>
    public static PassState Of(string query, string usualCar)
    {
        var current = CurrentCar.Of(query);
        string? Text(string key) => key switch
        {
            Speed => current.Speed,
            Height => current.Height,
            _ => current.Trial.GetValueOrDefault(key),
        };
        var said = Keys.Select(key => (Key: key, Words: Text(key))).Where(pair => pair.Words is not null)
            .Select(pair => (pair.Key, Words: pair.Words!, QuantityText.InBox(pair.Words!, UnitOf(pair.Key)).Value)).ToList();
        var ticks = new[] { (Key: Springs, Word: Frequencies), (Key: Inertia, Word: Grows) }
            .Select(tick => (tick.Key, Words: Text(tick.Key), tick.Word)).Where(tick => tick.Words is not null && tick.Words != tick.Word);
        var pins = PassPin.Read(current.Pins);
        return new PassState
        {
            Pins = pins ?? [],
            Car = current.Car ?? usualCar,
            Load = current.Load,
            Road = current.Road ?? current.Ground ?? Choices.Road.Usual!,
            Beside = current.Beside,
            AsFrequencies = Text(Springs) == Frequencies,
            InertiaGrows = Text(Inertia) == Grows,
            Values = said.Where(one => one.Value is not null && !(one.Key == Speed && one.Value == UsualSpeed))
                .ToImmutableSortedDictionary(one => one.Key, one => Rounded.Significant(one.Value!.Value, 12), StringComparer.Ordinal),
            Unread = said.Where(one => one.Value is null).Select(one => (one.Key, one.Words))
                .Concat(ticks.Select(tick => (tick.Key, Words: tick.Words!)))
                .Concat(pins is null ? [(CurrentCar.PinsKey, current.Pins!)] : [])
                .ToImmutableSortedDictionary(one => one.Key, one => one.Words, StringComparer.Ordinal),
        };
    }

    /// <summary>The state as the query of an address, with its question mark; equal states give equal text.</summary>
    public string Query => PageAddress.Query(
    [
        ("car", Car),
        ("load", Load),
        ("road", Road),
        ("beside", Beside),
        (CurrentCar.PinsKey, PassPin.Write(Pins)),
        (Springs, AsFrequencies ? Frequencies : null),
        (Inertia, InertiaGrows ? Grows : null),
        .. Values.Select(value => (value.Key, (string?)Rounded.Text(value.Value))),
        .. Unread.Select(words => (words.Key, (string?)words.Value)),
    ]);

    /// <summary>What is wrong with what cannot be read.</summary>
    internal IEnumerable<Objection> Objections => Unread.Select(one =>
    {
        if (one.Key == CurrentCar.PinsKey)
        {
            return new Objection(one.Key, $"{one.Key} '{one.Value}': {PassPin.RefusalOf(one.Value)}", IsUsage: true);
        }

        if (one.Key is Springs or Inertia)
        {
            var word = one.Key == Springs ? Frequencies : Grows;
            return new Objection(one.Key, $"{one.Key} '{one.Value}': there is {word}; leave it out for the usual.", IsUsage: true);
        }

        var refusal = QuantityText.InBox(one.Value, UnitOf(one.Key)).Refusal!;
        return new Objection(one.Key, $"{one.Key} '{one.Value}': {refusal.Message} {refusal.Advice}", IsUsage: true);
    });

    // The unit of a number in the address; the units of springs and the like are the car's own, so their numbers stand alone.
    private static string UnitOf(string key) => key switch
    {
        Speed => "km/h",
        Height => "mm",
        Luggage.Key => Luggage.Scale.Unit,
        _ => "",
    };
}
