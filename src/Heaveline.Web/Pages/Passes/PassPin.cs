using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Tuning;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>A trial that is pinned: what it sets on the car, whatever road, speed and load are looked at.</summary>
/// <param name="Values">What it sets, by the setting's key; nothing for the car as described.</param>
/// <param name="InertiaGrows">Whether the pitch inertia grows with the wheelbase that it sets.</param>
public sealed record PassPin(ImmutableSortedDictionary<string, double> Values, bool InertiaGrows)
{
    /// <summary>Most trials that are pinned at once.</summary>
    public const int Most = 3;

    /// <summary>Its place, from 0 on, which it keeps when another is unpinned: 0 is A.</summary>
    public int Place { get; init; }

    /// <summary>The car as described.</summary>
    public static PassPin AsDescribed { get; } = new(ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal), false);

    // What needs no escape in an address [RFC 3986 §2.3] and stands in no key and no number.
    private const string BetweenPins = "~~";
    private const char Between = '~';
    private const char Before = '_';
    private const string Described = "described";
    private const string Grows = PassState.Inertia + "_grows";

    /// <summary>Why pins of an address cannot be read: what of them is wrong, then how they are written.</summary>
    /// <param name="words">The words of the address.</param>
    public static string RefusalOf(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var places = words.Split(BetweenPins);
        return (places.Length > Most ? FormattableString.Invariant($"it names {places.Length} trials; ")
            : places[^1].Length == 0 ? $"no trial follows its last {BetweenPins}; "
            : string.Concat(places.SelectMany(Parts).Select(Problem).FirstOrDefault(problem => problem is not null))) + Written;
    }

    private static string Written => $"there are at most {Most} trials with {BetweenPins} between them, each as {Described} or as "
        + $"rear-spring{Before}50{Between}rear-damping{Before}1.5; leave it out for none.";

    /// <summary>It in the words of an address; equal pins have equal words.</summary>
    public string Word => Values.IsEmpty ? Described : string.Join(
        Between, [.. Values.Select(value => $"{value.Key}{Before}{Rounded.Text(value.Value)}"), .. InertiaGrows ? new[] { Grows } : []]);

    /// <summary>What a state tries on its car.</summary>
    public static PassPin Of(PassState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        var values = state.Values.RemoveRange(state.Values.Keys.Where(key => !CurrentCar.TrialKeys.Contains(key)));
        return new PassPin(values, state.InertiaGrows && values.ContainsKey("wheelbase"));
    }

    /// <summary>Pins in the words of an address, with what parts them, a free place before one of them blank; null for none.</summary>
    public static string? Write(IReadOnlyList<PassPin> pins)
    {
        ArgumentNullException.ThrowIfNull(pins);
        return pins.Count == 0 ? null : string.Join(BetweenPins, Enumerable.Range(0, pins.Max(pin => pin.Place) + 1)
            .Select(place => pins.FirstOrDefault(pin => pin.Place == place)?.Word ?? ""));
    }

    /// <summary>Pins with one more, at the first place that is free.</summary>
    /// <param name="pins">The pins, fewer than there may be.</param>
    /// <param name="more">The one more.</param>
    public static IReadOnlyList<PassPin> With(IReadOnlyList<PassPin> pins, PassPin more)
    {
        ArgumentNullException.ThrowIfNull(pins);
        var free = Enumerable.Range(0, Most).First(place => pins.All(pin => pin.Place != place));
        return [.. pins.Append(more with { Place = free }).OrderBy(pin => pin.Place)];
    }

    /// <summary>Pins from the words of an address, one that stands there twice once; null where they cannot be read.</summary>
    /// <param name="words">The words; null for no pins.</param>
    public static IReadOnlyList<PassPin>? Read(string? words)
    {
        if (words is null)
        {
            return [];
        }

        var places = words.Split(BetweenPins);
        var pins = places.Index().Where(one => one.Item.Length > 0).Select(one => Parse(one.Item) is { } pin ? pin with { Place = one.Index } : null)
            .ToList();
        return places.Length > Most || places[^1].Length == 0 || pins.Contains(null) ? null : [.. pins.OfType<PassPin>().DistinctBy(pin => pin.Word)];
    }

    /// <summary>A state with this trial on its car; road, speed and load stay.</summary>
    public PassState On(PassState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state with
        {
            Values = state.Values.RemoveRange(CurrentCar.TrialKeys).SetItems(Values),
            InertiaGrows = InertiaGrows,
            Unread = state.Unread.RemoveRange(CurrentCar.TrialKeys),
        };
    }

    /// <summary>What it sets, in words: "rear spring 50 N/mm, rear damping × 1.5".</summary>
    /// <param name="car">The car as described.</param>
    public string Words(Car car)
    {
        var said = Settings.All(InertiaGrows).Where(setting => Values.ContainsKey(setting.Key))
            .Select(setting => (setting.Label, Scale: setting.ScaleOf(car), Value: Values[setting.Key]))
            .Where(one => one.Scale is not null).Select(one => Text(one.Label, one.Scale!, one.Value))
            .Concat(Values.TryGetValue(Luggage.Key, out var kilograms) ? [Text("more luggage", Luggage.Scale, kilograms)] : []).ToList();
        return said.Count == 0 ? "as described" : string.Join(", ", said) + (InertiaGrows ? ", a body that grows with it" : "");
    }

    private static string Text(string label, SettingScale scale, double value) =>
        $"{char.ToLowerInvariant(label[0])}{label[1..]} {Rounded.Text(Math.Round(value, Math.Max(scale.Decimals, 3)))} {scale.Unit}".TrimEnd();

    private static string[] Parts(string words) => words.Length == 0 || words == Described ? [] : words.Split(Between);

    // What is wrong with one setting of a pin, before a blank; null for nothing.
    private static string? Problem(string part) => part == Grows ? null : part.Split(Before) switch
    {
        [var key, var number] when CurrentCar.TrialKeys.Contains(key) =>
            QuantityText.InBox(number, "").Refusal is { } refusal ? $"{key}: {refusal.Message.TrimEnd('.')}; " : null,
        [var key, _] => $"“{key}” is nothing that is set on a car; ",
        _ => $"“{part}” is no setting with its value; ",
    };

    private static PassPin? Parse(string words)
    {
        var parts = Parts(words);
        var values = ImmutableSortedDictionary.CreateBuilder<string, double>(StringComparer.Ordinal);
        foreach (var part in parts.Where(part => part != Grows))
        {
            if (part.Split(Before) is not [var key, var number] || !CurrentCar.TrialKeys.Contains(key)
                || QuantityText.InBox(number, "").Value is not { } value)
            {
                return null;
            }

            values[key] = Rounded.Significant(value, 12);
        }

        return new PassPin(values.ToImmutable(), parts.Contains(Grows) && values.ContainsKey("wheelbase"));
    }
}
