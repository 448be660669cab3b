using System.Collections.Immutable;
using Heaveline.Drives.Events;

namespace Heaveline.Films;

/// <summary>What a film tells of a pass, by the definitions of a computed pass where there are such; half-widths are of 90 %.</summary>
public sealed record FilmNumbers
{
    /// <summary>Pitch of hit and settling: measures of a computed pass, by their keys.</summary>
    public required ImmutableArray<EventNumber> OfPitch { get; init; }

    /// <summary>
    /// Share of the ends' mean square motion in the first second after the rear wheels have left that is level: h²/(h² + (½·L·θ)²), h midway between
    /// the axles.
    /// </summary>
    public required FilmNumber HeaveShare { get; init; }

    /// <summary>Where the body turns about in that second, m behind the front axle; not finite where it goes straight up and down.</summary>
    public required FilmNumber Centre { get; init; }

    /// <summary>Share of the ends' motion that turns about that centre.</summary>
    public required double AboutCentre { get; init; }

    /// <summary>RMS pitch of the settling's first second over the lift of the wheels, rad/m.</summary>
    public required FilmNumber PitchPerLift { get; init; }

    /// <summary>
    /// Whether the pitch had fallen below a tenth of its peak and stayed there for half a swing while it was seen; false: it may swing above it
    /// again.
    /// </summary>
    public required bool IsStill { get; init; }

    /// <summary>Swings of the settling that were seen, in cycles of the pitch; 0 where it turns round less than twice.</summary>
    public required double CyclesSeen { get; init; }

    /// <summary>How long the settling was seen, s.</summary>
    public required double Reach { get; init; }

    /// <summary>Whether the settling's first second was seen whole, but for a frame or two.</summary>
    public bool IsSecondSeen => Reach >= Measures.PitchSettling.Second - 0.04;

    /// <summary>A number of the pitch by its key; null where there is none.</summary>
    public EventNumber? For(string key) => OfPitch.FirstOrDefault(n => n.Measure.Key == key);

    /// <summary>RMS pitch in the first second of the settling; null where less than half of that second was seen.</summary>
    public EventNumber? Settling => For("settling-rms-pitch");

    // A car that is left open by the noise of its film has that noise in its slopes too.
    private static bool IsSharp(CarFromFilm car) => car.Of(Drives.Identification.CarNumber.FrequencyRatio) is { IsSaid: true };

    /// <summary>Reads them off a pass.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="car">The car that was found in it, whose levels are better than those of the first frames; null: none.</param>
    /// <param name="film">Which of the car's films it is.</param>
    public static FilmNumbers Of(SeenPass pass, CarFromFilm? car = null, int film = 0)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return car is { IsBelieved: true }
            ? new FilmMeasuring(pass.Less(car.Levels[film]), IsSharp(car) ? car.Fitted[film] : null).Numbers()
            : new FilmMeasuring(pass, null).Numbers();
    }
}
