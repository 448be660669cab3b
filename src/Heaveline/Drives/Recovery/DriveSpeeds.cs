using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>Speeds that suit the car of a drive: over each of its sites, and by the rule by which its ends fall into step.</summary>
public sealed record DriveSpeeds
{
    /// <summary>Each site whose bump is known.</summary>
    public required ImmutableArray<SiteSpeed> Sites { get; init; }

    /// <summary>When the ends of the linear car fall into step.</summary>
    public required Coincidence Ends { get; init; }

    /// <summary>
    /// The speed at which they do after <see cref="Coincidence.SuitedCycles"/>, with its 90 % interval; null where they do not, or at none that
    /// is told.
    /// </summary>
    public FoundSpeed? InStep { get; init; }

    /// <summary>The frequency ratio of the car, rear over front.</summary>
    public required double Ratio { get; init; }

    /// <summary>What holds that ratio in nine cases of ten.</summary>
    internal (double Low, double High) RatioRange { get; init; }

    /// <summary>The speeds.</summary>
    /// <param name="events">The bumps of the drive.</param>
    /// <param name="found">The car identified from it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">The car was not identified, or is not believed.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DriveSpeeds Of(DriveEvents events, CarFromDrive found, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(found);
        if (!found.IsBelieved || found.Known is not { } known)
        {
            throw new RefusedValueException("car of the drive", "not believed", "believed", "The speed that suits is told by the car.");
        }

        var draws = new PosteriorDraws(found);
        var search = new SpeedSearch(found, draws, stop);
        var ends = EndsOf(found.Mean.AsSpan(), known.Wheelbase);
        // A draw whose front swings no slower falls into step at no speed: beyond all.
        double[] drawn = [.. Enumerable.Range(0, PosteriorDraws.Count).Select(d =>
            EndsOf(draws.Car(d), known.Wheelbase).SpeedFor(Coincidence.SuitedCycles) ?? double.PositiveInfinity)];
        var ratio = found.Of(CarNumber.FrequencyRatio)!;
        return new DriveSpeeds
        {
            Sites = [.. events.Sites.Where(s => found.Humps.Any(h => h.Site == s.Name)).Select(search.Of)],
            Ends = ends,
            InStep = ends.SuitedSpeed is { } speed ? SpeedSearch.Found(speed, drawn) : null,
            Ratio = ratio.Value,
            RatioRange = (ratio.Low, ratio.High),
        };
    }

    // Both axles as quarter cars of one kilogram of sprung mass.
    private static Coincidence EndsOf(ReadOnlySpan<double> p, double wheelbase)
    {
        var car = CarNumbers.Car(p, wheelbase);
        static double? Period(double frequency, double damping, double unsprung, double hop)
        {
            var (body, wheel) = (2.0 * Math.PI * frequency, 2.0 * Math.PI * hop);
            return QuarterCar.Of(1.0, unsprung, body * body, 2.0 * damping * body, unsprung * wheel * wheel).BodyPeriod;
        }

        return new Coincidence
        {
            Wheelbase = wheelbase,
            FrontPeriod = Period(car.FrontFrequency, car.FrontDamping, car.FrontUnsprung, car.FrontHop),
            RearPeriod = Period(car.RearFrequency, car.RearDamping, car.RearUnsprung, car.RearHop),
            DynamicIndex = car.PitchIndex,
        };
    }
}
