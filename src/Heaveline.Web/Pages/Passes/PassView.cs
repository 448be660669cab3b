using Heaveline.Cars;
using Heaveline.Files.Editing;
using Heaveline.Files.Yaml;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Passes;

/// <summary>What a state of the page comes to.</summary>
public sealed record PassView
{
    /// <summary>The state.</summary>
    public required PassState State { get; init; }

    /// <summary>The chosen car's file.</summary>
    public required Reading<Car> Reading { get; init; }

    /// <summary>The chosen car as described.</summary>
    public required Car Described { get; init; }

    /// <summary>The chosen load state, without more luggage.</summary>
    public required LoadState Load { get; init; }

    /// <summary>The road as described.</summary>
    public required Road Road { get; init; }

    /// <summary>The car as set.</summary>
    public required PassAnswer Now { get; init; }

    /// <summary>What it is set against; null when nothing is changed, or when it cannot be computed.</summary>
    public required PassAnswer? Former { get; init; }

    /// <summary>
    /// Whether the car beside is a variant of the chosen one, on which nothing is set: then the chosen one is the car before the change.
    /// </summary>
    public bool IsTurned { get; init; }

    /// <summary>The crossing before the change; null when there is nothing to compare.</summary>
    public PassAnswer? Before => IsTurned && Former is not null ? Now : Former;

    /// <summary>The crossing after it.</summary>
    public PassAnswer After => IsTurned && Former is { } variant ? variant : Now;

    /// <summary>The numbers side by side, as the page's table has them.</summary>
    internal IReadOnlyList<MeasureChange> Changes => MeasureChange.Of(After, Before);

    /// <summary>What it is set against, in a sentence.</summary>
    public string Against => State.Beside is null ? "the car as described" : Former?.Name ?? State.Beside;

    /// <summary>Why there is nothing to set it against although there should be; null when all is well.</summary>
    public string? FormerProblem { get; init; }

    /// <summary>Whether the road is longer than what is driven of it here.</summary>
    public bool IsCut { get; init; }

    /// <summary>The changed keys that make the described car's file say what is set.</summary>
    public IReadOnlyList<KeyEdit> Words => [
        .. SettingWords.Of(Described, Now.Model.Car, State.Values, State.InertiaGrows, Reading.Root!),
        .. Luggage.Words(LoadOnCar, Now.Model.Load, Reading.Root!)];

    // Seats and loads move with the wheelbase.
    private LoadState LoadOnCar =>
        LoadedCar.LoadNamed(Now.Model.Car, Load.Name) is { } state && Now.Model.Load.Name != state.Name ? state : Now.Model.Load;
}
