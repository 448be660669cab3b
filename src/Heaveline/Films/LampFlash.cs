using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Films;

/// <summary>
/// The rhythm in which a headlamp flashes after a bump at night: how often the car pitches and how fast that dies away. The beam's edge may sweep the
/// camera twice in each swing; then the flash is twice as quick as the pitch. Nothing else of the car is told.
/// </summary>
public sealed record LampFlash
{
    /// <summary>Body pitch of road cars, Hz. Common practice, no source.</summary>
    public static readonly (double Low, double High) Usual = (0.8, 2.4);

    /// <summary>Flashes a second, Hz.</summary>
    public required FilmNumber Rhythm { get; init; }

    /// <summary>By which factor the flash is weaker one flash later.</summary>
    public required FilmNumber LeftAfterOne { get; init; }

    /// <summary>Share of the brightness's scatter after the bump that the dying swing explains.</summary>
    public required double Explained { get; init; }

    /// <summary>From when it was looked at, s.</summary>
    public required double From { get; init; }

    /// <summary>For how long, s.</summary>
    public required double Length { get; init; }

    /// <summary>Frames of that time in which the lamp was not seen: they are left out.</summary>
    public int Lost { get; init; }

    /// <summary>The rhythm less its slow part as it was seen, ln of the brightness, shape (n).</summary>
    public required ImmutableArray<double> Seen { get; init; }

    /// <summary>The dying swing at the same instants.</summary>
    public required ImmutableArray<double> Fitted { get; init; }

    /// <summary>The instants, s.</summary>
    public required ImmutableArray<double> Times { get; init; }

    /// <summary>Flashes that were seen.</summary>
    public double Count => Rhythm.Value * Length;

    /// <summary>Pitch frequencies that go with it, Hz: the flash's own, half of it, or both.</summary>
    public ImmutableArray<FilmNumber> Pitch
    {
        get
        {
            var half = new FilmNumber(0.5 * Rhythm.Value, 0.5 * Rhythm.Low, 0.5 * Rhythm.High);
            return [.. new[] { Rhythm, half }.Where(f => f.High >= Usual.Low && f.Low <= Usual.High)];
        }
    }

    /// <summary>Reads the rhythm off a lamp's brightness.</summary>
    /// <param name="lamp">The brightness.</param>
    /// <param name="from">When the rear wheels have left the bump, s; null: from the lamp's quickest change on.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">Too short, too few flashes, or no rhythm in it.</exception>
    public static LampFlash Of(LampTrack lamp, double? from = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(lamp);
        return new LampFit(lamp, from, stop).Found();
    }
}
