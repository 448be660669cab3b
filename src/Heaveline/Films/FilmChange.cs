using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;

namespace Heaveline.Films;

/// <summary>Films of one car before a change and after it.</summary>
public sealed record FilmChange
{
    /// <summary>
    /// One pass differs from the next by so much of its settling (standard deviation of the logarithm) where the line and the road's roughness are
    /// not the same: planted passes scatter by 6 to 8 %.
    /// </summary>
    public const double OnePass = 0.08;

    /// <summary>Speeds of before and after that lie farther apart are not compared, as a share.</summary>
    public const double SpeedsApart = 0.10;

    /// <summary>RMS pitch of the settling over the lift, after over before.</summary>
    public required FilmNumber Settling { get; init; }

    /// <summary>Numbers of the car, after over before, the index after less before; those that are said on both sides.</summary>
    public required ImmutableArray<(CarNumber Number, FilmNumber Change)> OfCar { get; init; }

    /// <summary>Whether both were driven alike.</summary>
    public required bool IsAlike { get; init; }

    /// <summary>Compares.</summary>
    /// <param name="before">The car before.</param>
    /// <param name="after">The car after.</param>
    public static FilmChange Of(SeenCar before, SeenCar after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return new FilmChange
        {
            IsAlike = Math.Abs(Math.Log(after.Speed / before.Speed)) <= SpeedsApart,
            Settling = Ratio(Whole(before), Whole(after)),
            OfCar =
            [
                .. before.Car.Estimates.Where(e => e.IsSaid && after.Car.Of(e.Number) is { IsSaid: true })
                    .Select(e => (e.Number, Change(e, after.Car.Of(e.Number)!))),
            ],
        };
    }

    // Mean of the logarithm, its half-width by the films' own doubt and by how passes scatter.
    private static (double Log, double Half) Whole(SeenCar car)
    {
        var n = car.PitchPerLift;
        var measured = 0.5 * (n.High - n.Low) / n.Value;
        var passes = Gaussian.Ninety * OnePass / Math.Sqrt(car.Passes.Length);
        return (Math.Log(n.Value), Math.Sqrt((measured * measured) + (passes * passes)));
    }

    private static FilmNumber Ratio((double Log, double Half) before, (double Log, double Half) after)
    {
        var (log, half) = (after.Log - before.Log, Math.Sqrt((before.Half * before.Half) + (after.Half * after.Half)));
        return new FilmNumber(Math.Exp(log), Math.Exp(log - half), Math.Exp(log + half));
    }

    private static FilmNumber Change(CarEstimate before, CarEstimate after)
    {
        if (before.Number == CarNumber.PitchIndex)
        {
            var half = 0.5 * Math.Sqrt(Math.Pow(before.High - before.Low, 2.0) + Math.Pow(after.High - after.Low, 2.0));
            return new FilmNumber(after.Value - before.Value, after.Value - before.Value - half, after.Value - before.Value + half);
        }

        (double, double) Log(CarEstimate e) => (Math.Log(e.Value), 0.5 * Math.Log(e.High / e.Low));
        return Ratio(Log(before), Log(after));
    }
}
