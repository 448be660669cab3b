using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>A car that was filmed at a place: its films, and what they tell.</summary>
public sealed record SeenCar
{
    // Cars pass bumps faster than a quick run, m/s, and their bodies swing faster than this, Hz. Common practice, no source.
    private static readonly double SlowPass = Velocity.FromKilometresPerHour(12.0).Si;
    private const double SlowBody = 0.7;

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

    /// <summary>Which of its films give its numbers of a pass: speeds within a tenth of one another, one pitches with the speed.</summary>
    public ImmutableArray<int> Films { get => field.IsDefault ? Near(Passes, null) : field; private init; }

    /// <summary>Mean speed of the films that give its numbers of a pass, m/s.</summary>
    public double Speed => Films.Average(f => Passes[f].Speed);

    /// <summary>Whether these films part by more than passes of one car do: it may have been changed between them.</summary>
    public bool MayBeChanged
    {
        get
        {
            FilmNumber[] all = [.. Films.Where(f => Numbers[f].IsSecondSeen).Select(f => Numbers[f].PitchPerLift).Where(n => n.Value > 0.0)];
            double Own(FilmNumber n) => Math.Pow(0.5 * (n.High - n.Low) / n.Value, 2.0) + Math.Pow(Gaussian.Ninety * FilmChange.OnePass, 2.0);
            return all.Length > 1 && all.MinBy(n => n.Value) is var least && all.MaxBy(n => n.Value) is var most
                && Math.Log(most.Value / least.Value) > Math.Sqrt(Own(least) + Own(most));
        }
    }

    /// <summary>
    /// Whether a film may be slow motion that nobody told of: the car goes so slowly in it, or its body swings so slowly, as hardly a car does.
    /// </summary>
    public bool MayBeSlowMotion => Passes.Any(p => !p.IsTimeSaid && p.Speed < SlowPass)
        || (Passes.Any(p => !p.IsTimeSaid) && Car.Of(CarNumber.FrontFrequency)!.Value < SlowBody
            && Car.Of(CarNumber.RearFrequency)!.Value < SlowBody);

    /// <summary>
    /// Pitch of the settling over the lift of the wheels, rad/m, mean of those of these films that show its first second whole; not a
    /// number where none does.
    /// </summary>
    public FilmNumber PitchPerLift =>
        Mean(Films.Select(f => Numbers[f]).Where(n => n.IsSecondSeen).Select(n => n.PitchPerLift), Passes.Average(p => p.WheelbaseDoubt)) is var n
            ? n with { Low = Math.Max(0.0, n.Low) } : default;

    /// <summary>Share of the settling's motion that is level, mean of these films.</summary>
    public FilmNumber HeaveShare => Mean(Films.Select(f => Numbers[f].HeaveShare), 0.0) is var n
        ? n with { Low = Math.Max(0.0, n.Low), High = Math.Min(1.0, n.High) } : default;

    /// <summary>The car by its films at a speed: those within a tenth of it, or of its film nearest to it.</summary>
    /// <param name="speed">The speed, m/s.</param>
    public SeenCar At(double speed) => Near(Passes, speed) is var near && near.SequenceEqual(Films) ? this : this with { Films = near };

    // The films round one speed; round the one that has most others where none is asked for, the slower of two.
    private ImmutableArray<int> Near(ImmutableArray<SeenPass> passes, double? speed)
    {
        var all = Enumerable.Range(0, passes.Length).ToArray();
        double Apart(int f, double v) => Math.Abs(Math.Log(passes[f].Speed / v));
        int[] Round(double v) => [.. all.Where(f => Apart(f, v) <= 0.5 * FilmChange.SpeedsApart)];
        // A film that shows the settling's first second is worth more than one that does not.
        var shown = all.Where(f => Numbers[f].IsSecondSeen).ToArray() is { Length: > 0 } whole ? whole : all;
        var middle = speed is { } v ? shown.MinBy(f => Apart(f, v))
            : shown.OrderByDescending(f => Round(passes[f].Speed).Length).ThenBy(f => passes[f].Speed).First();
        return [.. speed is { } near && Round(near).Intersect(shown).Any() ? Round(near) : Round(passes[middle].Speed)];
    }

    /// <summary>Reads films of one car.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="place">Where.</param>
    /// <param name="films">Tracks with what is known of each.</param>
    /// <param name="stop">Stops it.</param>
    public static SeenCar Of(string name, string place, IReadOnlyList<(FilmTrack Track, FilmGiven Given)> films, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(films);
        SeenPass[] passes = [.. films.Select(f => SeenPass.Of(f.Track, f.Given))];
        var car = CarFromFilm.Of(passes, films[0].Given with { FrontShare = ShareOf(films) }, stop);
        return new SeenCar
        {
            Name = name, Place = place, Passes = [.. passes], Car = car, Numbers = [.. passes.Select((p, f) => FilmNumbers.Of(p, car, f))],
        };
    }

    // One car under one load has one share on its front axle, whichever of its sheets says so.
    private static Amount<Plain>? ShareOf(IReadOnlyList<(FilmTrack Track, FilmGiven Given)> films)
    {
        Amount<Plain>[] said = [.. films.Select(f => f.Given.FrontShare).OfType<Amount<Plain>>()];
        return said.Select(s => s.Si).Distinct().Count() <= 1
            ? said.Length > 0 ? said[0] : null
            : throw new RefusedValueException(
                "the share on the front axle",
                string.Join(" and ", said.Select(s => Numeral.Of(s.Si, 3)).Distinct()),
                "one number in all sheets of a car",
                "Read films of one car under one load together, and give the share of that load.");
    }

    // Errors of one car's films are each film's own, but for the wheelbase: that is one error in all of them, a share of the number.
    private static FilmNumber Mean(IEnumerable<FilmNumber> of, double common)
    {
        FilmNumber[] all = [.. of.Where(n => double.IsFinite(n.Value))];
        if (all.Length == 0)
        {
            return new FilmNumber(double.NaN, double.NaN, double.NaN);
        }

        var mean = all.Average(n => n.Value);
        var half = Math.Sqrt(all.Sum(n => Math.Max(0.0, Math.Pow(0.5 * (n.High - n.Low), 2.0) - Math.Pow(common * n.Value, 2.0)))) / all.Length;
        var squares = all.Sum(n => Math.Pow(n.Value - mean, 2.0));
        var scatter = all.Length < 2 ? 0.0
            : LeastSquares.Student(all.Length - 1, 0.9) * Math.Sqrt(squares / (all.Length - 1) / all.Length);
        half = Math.Sqrt(Math.Pow(Math.Max(half, scatter), 2.0) + Math.Pow(common * mean, 2.0));
        return new FilmNumber(mean, mean - half, mean + half);
    }
}
