using BenchmarkDotNet.Attributes;
using Heaveline.Cars;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Bench;

/// <summary>
/// One design on a random road: Wk-weighted vertical acceleration off the middle of the body, 80 frequencies from 0.2 to 40 Hz, two tracks, wheelbase
/// delay. Closed form against a full complex solution at the same frequencies, and the equivalent linearisation that takes bends in.
/// </summary>
public class FrequencyDesign
{
    private const double Speed = 80.0 / 3.6;
    private const int Designs = 1000;

    private static readonly RoadSpectrum Road = RoadSpectrum.Of(RoadClass.C);
    private readonly RideModel model = RideModel.Of(Saloon.Of());
    private readonly RideModel joined = RideModel.Of(Saloon.Of() with
    {
        Interconnection = new ElasticLink { Rate = new(5000.0), FrontRatio = new(1.0), RearRatio = new(1.0), Carried = new(0.0) },
    });
    private readonly RideSpectrum seat;
    private readonly RideSpectrum centre;
    private readonly RideModel driven = RideModel.Of(Saloon.Of(), Driver);
    private readonly SymmetricRide[] designs;
    private readonly SymmetricRide[] linked;
    private readonly OneSidedRide[] aside;
    private readonly OneSidedRide[] asideLinked;

    /// <summary>Makes the road and a thousand designs of different springs and dampers.</summary>
    public FrequencyDesign()
    {
        seat = RideSpectrum.Vertical(model, Road, Speed, 1.3, 0.35, Weightings.Wk.Factor);
        centre = RideSpectrum.Vertical(model, Road, Speed, 1.3, 0.0, Weightings.Wk.Factor);
        designs = Varied(SymmetricRide.From(model)!.Value);
        linked = Varied(SymmetricRide.From(joined)!.Value);
        aside = Aside(driven);
        asideLinked = Aside(RideModel.Of(joined.Car, Driver));
    }

    // On the left front seat, nobody beside: the usual load of a car on the road.
    private static LoadState Driver { get; } = new()
    {
        Name = "driver",
        Loads = [new Load { Name = "driver", Mass = new(80.0), BehindFrontAxle = new(1.3), LeftOfMiddle = new(0.36), Height = new(0.6) }],
    };

    /// <summary>Heave, pitch and roll, per design.</summary>
    [Benchmark(Baseline = true, OperationsPerInvoke = Designs, Description = "closed form, seat off the middle")]
    public double Seat() => Sum(seat, designs);

    /// <summary>Heave and pitch only, per design.</summary>
    [Benchmark(OperationsPerInvoke = Designs, Description = "closed form, seat in the middle (no roll)")]
    public double Centre() => Sum(centre, designs);

    /// <summary>With an elastic link, per design.</summary>
    [Benchmark(OperationsPerInvoke = Designs, Description = "closed form, axles joined")]
    public double Linked() => Sum(seat, linked);

    /// <summary>Heave, pitch and roll in one, per design.</summary>
    [Benchmark(OperationsPerInvoke = Designs, Description = "closed form, driver alone, seat off the middle")]
    public double DriverAlone() => Sum(seat, aside);

    /// <summary>The same with an elastic link, per design.</summary>
    [Benchmark(OperationsPerInvoke = Designs, Description = "closed form, driver alone, axles joined")]
    public double DriverAloneLinked() => Sum(seat, asideLinked);

    /// <summary>A full complex solution per frequency.</summary>
    [Benchmark(Description = "full solution, 80 frequencies")]
    public double Full() => FrequencyResponse.Of(model, Speed, seat.Frequencies).Of(RideSignal.VerticalAcceleration(model, 1.3, 0.35)).Left[0].Real;

    /// <summary>The reference: bends at the response's own level, error controlled to 1e-6.</summary>
    [Benchmark(Description = "random response, equivalent linearisation, 1e-6")]
    public double Equivalent() => RandomResponse.Of(model, Road, Speed).Rms(RideSignal.HeaveAcceleration);

    /// <summary>The same with the driver alone.</summary>
    [Benchmark(Description = "random response, driver alone, 1e-6")]
    public double EquivalentDriverAlone() => RandomResponse.Of(driven, Road, Speed).Rms(RideSignal.HeaveAcceleration);

    private static double Sum(RideSpectrum spectrum, OneSidedRide[] rides)
    {
        var sum = 0.0;
        foreach (ref readonly var ride in rides.AsSpan())
        {
            sum += spectrum.Rms(ride);
        }

        return sum;
    }

    private static OneSidedRide[] Aside(RideModel model)
    {
        var ride = OneSidedRide.From(model);
        return [.. Varied(ride.Mean).Select(mean => ride with { Mean = mean })];
    }

    private static double Sum(RideSpectrum spectrum, SymmetricRide[] rides)
    {
        var sum = 0.0;
        foreach (ref readonly var ride in rides.AsSpan())
        {
            sum += spectrum.Rms(ride);
        }

        return sum;
    }

    private static SymmetricRide[] Varied(SymmetricRide ride) =>
    [
        .. Enumerable.Range(0, Designs).Select(k => ride with
        {
            Front = ride.Front with { Rate = ride.Front.Rate * (0.8 + (0.0004 * k)), Damping = ride.Front.Damping * (1.2 - (0.0004 * k)) },
            Rear = ride.Rear with { Rate = ride.Rear.Rate * (1.2 - (0.0004 * k)) },
        }),
    ];
}
