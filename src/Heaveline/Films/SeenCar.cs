using System.Collections.Immutable;

namespace Heaveline.Films;

/// <summary>A car that was filmed at a place: its films, and what they tell.</summary>
public sealed record SeenCar
{
    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>Where it was filmed; blank where nothing is said.</summary>
    public string Place { get; init; } = "";

    /// <summary>What each film shows.</summary>
    public required ImmutableArray<SeenPass> Passes { get; init; }

    /// <summary>What each film's numbers are.</summary>
    public required ImmutableArray<FilmNumbers> Numbers { get; init; }

    /// <summary>The car between its wheels, by all films together.</summary>
    public required CarFromFilm Car { get; init; }

    /// <summary>Mean speed of its films, m/s.</summary>
    public double Speed => Passes.Average(p => p.Speed);

    /// <summary>Pitch of the settling over the lift of the wheels, rad/m, mean of its films.</summary>
    public FilmNumber PitchPerLift => Mean(Numbers.Select(n => n.PitchPerLift));

    /// <summary>Share of the settling's motion that is level, mean of its films.</summary>
    public FilmNumber HeaveShare => Mean(Numbers.Select(n => n.HeaveShare));

    /// <summary>Reads films of one car.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="place">Where.</param>
    /// <param name="films">Tracks with what is known of each.</param>
    /// <param name="stop">Stops it.</param>
    public static SeenCar Of(string name, string place, IReadOnlyList<(FilmTrack Track, FilmGiven Given)> films, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(films);
        SeenPass[] passes = [.. films.Select(f => SeenPass.Of(f.Track, f.Given))];
        var car = CarFromFilm.Of(passes, films[0].Given, stop);
        return new SeenCar
        {
            Name = name, Place = place, Passes = [.. passes], Car = car, Numbers = [.. passes.Select((p, f) => FilmNumbers.Of(p, car, f))],
        };
    }

    // Errors of one car's films are its own, but for the wheelbase.
    private static FilmNumber Mean(IEnumerable<FilmNumber> of)
    {
        FilmNumber[] all = [.. of.Where(n => double.IsFinite(n.Value))];
        if (all.Length == 0)
        {
            return new FilmNumber(double.NaN, double.NaN, double.NaN);
        }

        var mean = all.Average(n => n.Value);
        var half = Math.Sqrt(all.Sum(n => Math.Pow(0.5 * (n.High - n.Low), 2.0))) / all.Length;
        var squares = all.Sum(n => Math.Pow(n.Value - mean, 2.0));
        var scatter = all.Length < 2 ? 0.0
            : Numerics.LeastSquares.Student(all.Length - 1, 0.9) * Math.Sqrt(squares / (all.Length - 1) / all.Length);
        half = Math.Max(half, scatter);
        return new FilmNumber(mean, mean - half, mean + half);
    }
}
