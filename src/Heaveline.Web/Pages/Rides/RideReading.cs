using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Rides;

/// <summary>
/// What the page of the ride asks: two questions of one study, the sweep over speed and the spectra at one speed, and the road itself.
/// </summary>
public sealed record RideReading
{
    private const int SpeedCount = 21;

    // Passes in time, and the columns of the tables, stand at every so many of the speeds.
    private const int Apart = 4;

    /// <summary>The first car; null where there is none.</summary>
    public required LoadedCar? Car { get; init; }

    /// <summary>Its seat; null where it has none.</summary>
    public required Seat? Seat { get; init; }

    /// <summary>The road; null where it is refused.</summary>
    public required RideRoad? Road { get; init; }

    /// <summary>Speed of the spectra, m/s; null where it is refused.</summary>
    public required double? At { get; init; }

    /// <summary>Comfort and pitch against speed.</summary>
    public required AskedReading<RideAsked> Sweep { get; init; }

    /// <summary>Spectra and transfer of the first car at one speed.</summary>
    public required AskedReading<RideAsked> Spectra { get; init; }

    /// <summary>Reads what is chosen.</summary>
    internal static RideReading Of(PageChoices chosen, GarageView garage, RideRoads roads)
    {
        var reader = new AskedReader(chosen.Given, garage);
        var car = reader.Car(Choices.Car, Choices.Load);
        var road = roads.Read(reader);
        var common = reader.Key;
        var beside = chosen.Given.Of(RidePageChoices.Beside) is null ? null : reader.Car(RidePageChoices.Beside);
        var seat = car is null ? null : reader.Seat(RidePageChoices.Seat, car.Car);
        var speeds = reader.Speeds(Choices.From, Choices.To, SpeedCount);
        var inTime = reader.IsTicked(RideStudy.InTime);
        var sweepKey = reader.Key;
        var at = reader.Speed(RidePageChoices.At);
        if (road is { Spectrum: null })
        {
            reader.Object("spectrum", road.WhyNone ?? "There is no spectrum to drive over.", isUsage: false);
        }

        AskedReading<RideAsked> Reading(string key, Func<RideAsked> asked) =>
            new() { Asked = reader.IsRefused ? null : asked(), Objections = reader.Objections, Key = key };
        var sweep = Reading(sweepKey, () => new RideAsked
        {
            Cars = beside is null ? [car!] : Both(chosen.Given, car!, beside),
            Road = road!.Spectrum!,
            Speeds = [.. speeds],
            Every = Apart,
            Seat = seat?.Name,
            InTime = inTime,
        });
        return new RideReading
        {
            Car = car,
            Seat = seat,
            Road = road,
            At = at,
            Sweep = sweep,
            Spectra = Reading(
                FormattableString.Invariant($"{common}\u001f{at:R}"),
                () => new RideAsked { Cars = [car!], Road = road!.Spectrum!, Speeds = [at!.Value] }),
        };
    }

    private static ImmutableArray<LoadedCar> Both(Given given, LoadedCar car, Car beside)
    {
        var names = NamesApart.Of([(car.Name, given.Of(Choices.Car)!), (beside.Name, given.Of(RidePageChoices.Beside)!)]);
        return [car with { Name = names[0] }, LoadedCar.Beside(names[1], beside, car.Load)];
    }
}
