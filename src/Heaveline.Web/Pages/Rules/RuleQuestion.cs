using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Rules;

/// <summary>The choices checked: what is to be mapped, or what is wrong with which choice.</summary>
public sealed record RuleQuestion
{
    /// <summary>Slowest speed that can be asked for, km/h.</summary>
    public const double Slowest = 5.0;

    /// <summary>Fastest speed that can be asked for, km/h.</summary>
    public const double Fastest = 250.0;

    /// <summary>The car's name in the garage.</summary>
    public required string CarName { get; init; }

    /// <summary>The car's file read; null when there is none of that name.</summary>
    public required CarReading? Reading { get; init; }

    /// <summary>The load state; the reference state when the one asked for is not there.</summary>
    public required LoadState Load { get; init; }

    /// <summary>The road's name.</summary>
    public required string RoadName { get; init; }

    /// <summary>The road; null when there is none of that name.</summary>
    public required Road? Road { get; init; }

    /// <summary>Word of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Word of the measure.</summary>
    public required string Measure { get; init; }

    /// <summary>Slowest and fastest speed, m/s.</summary>
    public required (double From, double To) Speeds { get; init; }

    /// <summary>What is wrong, by the control's name; empty when all can be mapped.</summary>
    public required IReadOnlyDictionary<string, string> Refused { get; init; }

    /// <summary>The car.</summary>
    public Car? Car => Reading?.Car;

    /// <summary>Whether the frequency ratio is turned.</summary>
    public bool IsRatio => Rule == "ratio";

    /// <summary>What tells this question from every other: equal keys have equal answers, also when a file has been changed meanwhile.</summary>
    public string Key => string.Join('\u001f', [.. Reading?.Sources.Select(s => s.Text) ?? [], Load.Name, RoadName, Road?.Caption ?? "", Rule, Measure, .. new[] { Speeds.From, Speeds.To }.Select(v => v.ToString("R", CultureInfo.InvariantCulture))]);

    /// <summary>The car under a load.</summary>
    /// <exception cref="RefusedValueException">It cannot stand so.</exception>
    public RideModel Model(LoadState load) => RideModel.Of(Car!, load);

    /// <summary>Checks choices against what is in the garage.</summary>
    internal static RuleQuestion Of(RuleChoices choices, GarageView garageView)
    {
        var refused = new Dictionary<string, string>(StringComparer.Ordinal);
        var names = garageView.CarNames;
        var carName = choices.Car ?? (names.Count > 0 ? names[0] : "");
        var reading = carName.Length > 0 ? garageView.Car(carName) : null;
        if (reading is null)
        {
            refused["car"] = names.Count == 0 ? "There is no car file in this garage yet." : $"There is no car named {carName} in this garage.";
        }
        else if (reading.Car is null)
        {
            refused["car"] = $"The file of {carName} is refused; its own page says why.";
        }

        var car = reading?.Car;
        var load = LoadNamed(car, choices.Load);
        if (car is not null && load is null)
        {
            refused["load"] = $"{car.Name} has no load state named {choices.Load}.";
        }

        var roadName = choices.Road ?? RuleChoices.UsualRoad;
        var road = garageView.Road(roadName)?.Road;
        if (road is null)
        {
            refused["road"] = $"There is no road named {roadName}.";
        }
        else if (road.Event is null)
        {
            refused["road"] = $"{Raised(road.Name)} has no single bump, so that hit and settling cannot be told apart.";
        }

        var rule = choices.Rule ?? RuleChoices.UsualRule;
        if (!MapRule.Words.Contains(rule))
        {
            refused["rule"] = $"“{rule}” is no rule that can be mapped.";
        }

        var measure = choices.Measure ?? RuleChoices.UsualMeasure;
        if (!MapRule.Measures.Contains(measure))
        {
            refused["measure"] = $"“{measure}” is no measure of a pass.";
        }

        var from = Speed(choices.From ?? RuleChoices.UsualFrom, "from", refused);
        var to = Speed(choices.To ?? RuleChoices.UsualTo, "to", refused);
        if (!refused.ContainsKey("from") && !refused.ContainsKey("to") && !(to - from >= 5.0 / 3.6))
        {
            refused["to"] = "The fastest speed must lie at least 5 km/h above the slowest.";
        }

        return new RuleQuestion
        {
            CarName = carName,
            Reading = reading,
            Load = load ?? LoadState.Reference,
            RoadName = roadName,
            Road = road,
            Rule = rule,
            Measure = measure,
            Speeds = (from, to),
            Refused = refused,
        };
    }

    /// <summary>The load state of a name; null when the car has none so named. Without a name: the car's first, or the reference state.</summary>
    public static LoadState? LoadNamed(Car? car, string? name) => name is null
        ? car is { LoadStates.Count: > 0 } ? car.LoadStates[0] : LoadState.Reference
        : name == LoadState.Reference.Name ? LoadState.Reference : car?.LoadStates.FirstOrDefault(l => l.Name == name);

    /// <summary>A speed as typed, km/h, in m/s; NaN, and the reason beside its control, when it is none.</summary>
    public static double Speed(string words, string control, Dictionary<string, string> refused)
    {
        if (double.TryParse(words.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var speed) && speed is >= Slowest and <= Fastest)
        {
            return speed / 3.6;
        }

        refused[control] = FormattableString.Invariant($"“{words}” is no speed from {Slowest:F0} to {Fastest:F0} km/h.");
        return double.NaN;
    }

    private static string Raised(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
