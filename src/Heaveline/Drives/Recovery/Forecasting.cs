using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;

namespace Heaveline.Drives.Recovery;

/// <summary>Passes of a car before and after a change over the roads of a drive, and over draws of their humps.</summary>
internal sealed class Forecasting
{
    // What a forecast of a difference is off by besides, as half-widths (90 %), by planted drives: where the drive's own car is believed, and where
    // it is not, since stops touched or a body that shakes make the road that it tells another.
    private const double Model = 0.045;
    private const double Unbelieved = 0.11;

    private readonly PosteriorDraws draws;
    private readonly ImmutableArray<RecoveredRoad> roads;
    private readonly CancellationToken stop;
    private readonly double model;

    public Forecasting(CarFromDrive found, ImmutableArray<RecoveredRoad> roads, CancellationToken stop) =>
        (draws, this.roads, this.stop, model) = (new PosteriorDraws(found), roads, stop, found.IsBelieved ? Model : Unbelieved);

    /// <summary>The forecast.</summary>
    /// <param name="before">The car before.</param>
    /// <param name="after">The changed one.</param>
    /// <param name="drawn">
    /// Both as their files' doubts leave them possible, drawn together, one for each draw of the road; null: as they stand.
    /// </param>
    public Forecast Of(RideModel before, RideModel after, Func<int, (RideModel Before, RideModel After)>? drawn)
    {
        var asStated = Rows(_ => (before, after));
        var rows = drawn is null ? asStated : Rows(draw => draw < 0 ? (before, after) : drawn(draw));
        return rows.Of(before.Car.Name, after.Car.Name, asStated.Doubts);
    }

    private ForecastRows Rows(Func<int, (RideModel Before, RideModel After)> cars)
    {
        var requests = new List<PassRequest?>();
        for (var draw = -1; draw < PosteriorDraws.Count; draw++)
        {
            var (before, after) = cars(draw);
            foreach (var recovered in roads)
            {
                var road = (draw < 0 ? recovered : draws.Road(recovered, draw)).Road;
                requests.Add(new PassRequest(before, road, recovered.Speed));
                requests.Add(new PassRequest(after, road, recovered.Speed));
            }
        }

        var rows = BatchedMeasures.Of(requests, ForecastRows.Measured, null, -1, stop);
        return new ForecastRows(
            roads, PosteriorDraws.Count, (draw, pass, isAfter) => [.. rows[(2 * ((draw * roads.Length) + pass)) + (isAfter ? 1 : 0)]], model);
    }
}
