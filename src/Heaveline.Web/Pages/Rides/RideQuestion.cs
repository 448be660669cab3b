using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Web.Pages.Rules;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Rides;

/// <summary>The choices checked: what is to be driven, or what is wrong with which choice.</summary>
public sealed record RideQuestion
{
    /// <summary>The car and the one beside it, by their names in the garage.</summary>
    public required IReadOnlyList<(string Name, CarReading Reading)> Cars { get; init; }

    /// <summary>The first car's name.</summary>
    public required string CarName { get; init; }

    /// <summary>The load state of the first car.</summary>
    public required LoadState Load { get; init; }

    /// <summary>The seat of the first car; null when it has none.</summary>
    public required Seat? Seat { get; init; }

    /// <summary>The road; null when it cannot be read.</summary>
    public required RideRoad? Road { get; init; }

    /// <summary>Slowest and fastest speed, m/s.</summary>
    public required (double From, double To) Speeds { get; init; }

    /// <summary>Speed of the spectra, m/s.</summary>
    public required double At { get; init; }

    /// <summary>What is wrong, by the control's name.</summary>
    public required IReadOnlyDictionary<string, string> Refused { get; init; }

    /// <summary>The first car.</summary>
    public Car? Car => Cars.Count > 0 ? Cars[0].Reading.Car : null;

    /// <summary>Whether anything can be driven.</summary>
    public bool CanDrive => Refused.Count == 0 && Road?.Spectrum is not null;

    /// <summary>What tells the sweep over speed from every other.</summary>
    public string SweepKey => string.Join('\u001f', [.. CarTexts, Load.Name, Seat?.Name ?? "", RoadText, Text(Speeds.From), Text(Speeds.To)]);

    /// <summary>What tells the spectra at one speed from every other.</summary>
    public string SpectraKey => string.Join('\u001f', [.. CarTexts, Load.Name, RoadText, Text(At)]);

    /// <summary>A car under the chosen load; the car beside under its own of that name, or as described where it has none.</summary>
    /// <exception cref="RefusedValueException">It cannot stand so.</exception>
    public RideModel Model(int index) => RideModel.Of(Cars[index].Reading.Car!, index == 0 ? Load : RuleQuestion.LoadNamed(Cars[index].Reading.Car, Load.Name) ?? LoadState.Reference);

    private IEnumerable<string> CarTexts => Cars.SelectMany(c => c.Reading.Sources.Select(s => s.Text).Prepend(c.Name));

    private string RoadText => Road is null ? "" : $"{Road.Words}|{Road.Heights.Caption}|{Road.Spectrum?.Density.Si.ToString("R", CultureInfo.InvariantCulture)}|{Road.Spectrum?.Waviness.ToString("R", CultureInfo.InvariantCulture)}";

    /// <summary>Checks choices against what is in the garage.</summary>
    internal static RideQuestion Of(RideChoices choices, GarageView garageView)
    {
        var refused = new Dictionary<string, string>(StringComparer.Ordinal);
        var names = garageView.CarNames;
        var carName = choices.Car ?? (names.Count > 0 ? names[0] : "");
        var cars = new List<(string, CarReading)>();
        Take(carName, "car");
        if (!string.IsNullOrEmpty(choices.Beside) && cars.Count > 0)
        {
            Take(choices.Beside, "beside");
        }

        var car = cars.Count > 0 ? cars[0].Item2.Car : null;
        var load = RuleQuestion.LoadNamed(car, choices.Load);
        if (car is not null && load is null)
        {
            refused["load"] = $"{car.Name} has no load state named {choices.Load}.";
        }

        var seat = choices.Seat is null ? (car is { Seats.Count: > 0 } ? car.Seats[0] : null) : car?.Seats.FirstOrDefault(s => s.Name == choices.Seat);
        if (car is not null && choices.Seat is not null && seat is null)
        {
            refused["seat"] = $"{car.Name} has no seat named {choices.Seat}.";
        }

        var road = RideRoad.Of(choices, garageView, refused);
        var from = RuleQuestion.Speed(choices.From ?? RideChoices.UsualFrom, "from", refused);
        var to = RuleQuestion.Speed(choices.To ?? RideChoices.UsualTo, "to", refused);
        var at = RuleQuestion.Speed(choices.At ?? RideChoices.UsualAt, "at", refused);
        if (!refused.ContainsKey("from") && !refused.ContainsKey("to") && !(to - from >= 5.0 / 3.6))
        {
            refused["to"] = "The fastest speed must lie at least 5 km/h above the slowest.";
        }

        return new RideQuestion { Cars = cars, CarName = carName, Load = load ?? LoadState.Reference, Seat = seat, Road = road, Speeds = (from, to), At = at, Refused = refused };

        void Take(string name, string control)
        {
            var reading = name.Length > 0 ? garageView.Car(name) : null;
            if (reading?.Car is not null)
            {
                cars.Add((name, reading));
            }
            else
            {
                refused[control] = names.Count == 0 ? "There is no car file in this garage yet." : reading is null ? $"There is no car named {name} in this garage." : $"The file of {name} is refused; its own page says why.";
            }
        }
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
