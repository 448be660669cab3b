using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Files.Garages;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Stories;

/// <summary>The cars of the story: an invented saloon as it was built, and with the change that cures it, lightly and heavily loaded.</summary>
/// <param name="Built">The saloon.</param>
/// <param name="Cured">The same with the change.</param>
/// <param name="Light">The least that is ever in it.</param>
/// <param name="Loaded">The most.</param>
/// <param name="Change">What was changed, in the words of the change's own file.</param>
/// <param name="IsHere">Whether both stand in this garage, so that the other pages can show them.</param>
/// <param name="Key">Tells these cars, as their files are now, from all others.</param>
internal sealed record StoryCars(Car Built, Car Cured, LoadState Light, LoadState Loaded, string Change, bool IsHere, string Key)
{
    /// <summary>Name of the saloon in a garage.</summary>
    public const string Name = "fern-saloon";

    /// <summary>Name of the change in a garage.</summary>
    public const string CuredName = "fern-saloon-cured";

    /// <summary>Speed, m/s: that of the pass where none is said, so that its page goes on with the same numbers.</summary>
    public static double Speed { get; } = In.KilometresPerHour.ToSi(PassState.UsualSpeed);

    /// <summary>The road: the one of the pass where none is said.</summary>
    public static Road Road { get; } = Heaveline.Files.Roads.NamedRoads.All[Choices.Road.Usual!];

    /// <summary>The cars of this garage, or else those that come with the program; null where neither has them.</summary>
    /// <param name="garage">The garage's folder.</param>
    /// <param name="invented">Folder of the invented cars; null where they are not at hand.</param>
    public static StoryCars? Of(string garage, string? invented) =>
        From(garage, isHere: true) ?? (invented is not null && Directory.Exists(invented) ? From(invented, isHere: false) : null);

    /// <summary>The saloon, then the cured one, both under the heavy load: what is driven side by side.</summary>
    public ImmutableArray<LoadedCar> Pair => [new(Built.Name, Built, Loaded), new(CuredTitle, Cured, Loaded)];

    /// <summary>The same four times: each under the light load, then under the heavy one.</summary>
    public ImmutableArray<LoadedCar> All =>
    [
        new($"{Built.Name}, {Light.Name}", Built, Light), new($"{CuredTitle}, {Light.Name}", Cured, Light),
        new($"{Built.Name}, {Loaded.Name}", Built, Loaded), new($"{CuredTitle}, {Loaded.Name}", Cured, Loaded),
    ];

    /// <summary>What the cured one is called.</summary>
    public string CuredTitle => Cured.Name;

    /// <summary>Both in hand, for the links to the other pages.</summary>
    public CurrentCar InHand => new() { Car = CuredName, Load = Loaded.Name, Beside = Name };

    private static StoryCars? From(string folder, bool isHere)
    {
        var cars = new Garage(folder);
        var (built, cured) = (cars.Car($"{Name}.yaml"), cars.Car($"{CuredName}.yaml"));
        if (built.Value is not { } before || cured.Value is not { } after || before.LoadStates.Count < 2)
        {
            return null;
        }

        // Both under the same two loads: a file that somebody has changed may tell another story, and then none is told of it.
        var byMass = before.LoadStates.OrderBy(load => load.Loads.Sum(one => one.Mass.Si)).ToList();
        return after.LoadStates.Any(load => load.Name == byMass[0].Name) && after.LoadStates.Any(load => load.Name == byMass[^1].Name)
            ? new(before, after, byMass[0], byMass[^1], after.Note, isHere,
                string.Join('|', built.Sources.Concat(cured.Sources).Select(source => source.ToInput().Sha256)))
            : null;
    }
}
