using System.Collections.Concurrent;
using Heaveline.Roads;

namespace Heaveline.Rides;

/// <summary>A random road at a speed, with what is worked out of it once for every car that rides there. For several threads.</summary>
internal sealed class RideRoad
{
    private readonly ConcurrentDictionary<int, RideGrid> grids = [];
    private readonly TrackCoherence? tracks;

    /// <param name="spectrum">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="tracks">Two tracks for both axles, or null: every wheel in its own track of an isotropic surface.</param>
    public RideRoad(RoadSpectrum spectrum, double speed, TrackCoherence? tracks) =>
        (Spectrum, Speed, this.tracks) = (spectrum, Passes.DrivingSpeed.Checked(speed), tracks);

    /// <summary>The road.</summary>
    public RoadSpectrum Spectrum { get; }

    /// <summary>Speed, m/s.</summary>
    public double Speed { get; }

    /// <summary>Its frequencies in so many equal panels.</summary>
    public RideGrid In(int panels) => grids.GetOrAdd(panels, count => In(RidePanel.All(count)));

    /// <summary>Its frequencies in panels of a car's own.</summary>
    public RideGrid In(RidePanel[] panels) => new(Spectrum, Speed, tracks, panels);
}
