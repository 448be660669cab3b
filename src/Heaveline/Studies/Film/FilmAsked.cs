using System.Collections.Immutable;
using Heaveline.Films;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What is asked of films of passing cars.</summary>
public sealed record FilmAsked
{
    /// <summary>The films: of one car, or of all cars at one place.</summary>
    public required ImmutableArray<KeptFilm> Films
    {
        get;
        init => field = value.IsDefaultOrEmpty ? throw new RefusedValueException("films", "none", "at least one", "Name a film.") : value;
    }

    /// <summary>Films of the same car after a change; empty for none.</summary>
    public ImmutableArray<KeptFilm> After { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>The place whose cars are to be put in order; null: one car is asked about.</summary>
    public string? Place { get; init; }

    /// <summary>A car file to stand beside the film; null for none.</summary>
    public LoadedCar? Car { get; init; }

    /// <summary>The bump that was filmed, for the car file's own pass; null: only its numbers stand beside.</summary>
    public Road? Road { get; init; }

    /// <summary>Name that the film's bump and car have in words: "grey estate at school hump".</summary>
    internal string Named => Films[0].Sheet is var sheet && sheet.Place.Length > 0 ? $"{sheet.Seen} at {sheet.Place}" : sheet.Seen;
}
