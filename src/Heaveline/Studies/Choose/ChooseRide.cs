using System.Collections.Concurrent;
using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>
/// Vertical acceleration at a seat on the random road, weighted by Wk, of many setups in one car: what is worked out of the road is worked out once
/// for all that stand on the same wheels. The car is linear, its dampers by their chord (<see cref="ChordDamping"/>).
/// </summary>
/// <param name="road">The class of the road.</param>
internal sealed class ChooseRide(RoadClass road)
{
    private readonly RoadSpectrum spectrum = RoadSpectrum.Of(road);
    private readonly ConcurrentDictionary<double, Rides.RideRoad> ridden = [];
    private readonly ConcurrentDictionary<(string Load, double Speed, double Front, double Rear), RideSpectrum> spectra = [];

    /// <summary>
    /// Root mean square change of the tyre load over that at rest, at the worst wheel (–), as <c>ride</c> tells it; NaN where no linear car moves so.
    /// </summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="speed">Speed, m/s.</param>
    public double Grip(RideModel model, double speed)
    {
        var options = RandomOptions.Default;
        var response = RandomResponse.Of(
            model, ridden.GetOrAdd(speed, v => new Rides.RideRoad(spectrum, v, options.Tracks)), options, CancellationToken.None);
        return response.Outcome == RandomOutcome.NotConverged ? double.NaN : RideCatalogue.WorstLoadVariation.Of(new CarOnRoad(response));
    }

    /// <summary>Root mean square at the first seat, or over the middle of a car without seats, m/s².</summary>
    /// <param name="model">Car and load at trim.</param>
    /// <param name="ride">The same made linear.</param>
    /// <param name="speed">Speed, m/s.</param>
    public double Of(RideModel model, in OneSidedRide ride, double speed)
    {
        var car = model.Car;
        var key = (model.Load.Name, speed, car.Front.Tyre.ContactLength.Si, car.Rear.Tyre.ContactLength.Si);
        return spectra.GetOrAdd(key, _ => RideSpectrum.Vertical(
            model,
            spectrum,
            speed,
            car.Seats.Count > 0 ? car.Seats[0].BehindFrontAxle.Si : 0.5 * car.Wheelbase.Si,
            car.Seats.Count > 0 ? car.Seats[0].LeftOfMiddle.Si : 0.0,
            Weightings.Wk.Factor)).Rms(ride);
    }
}
