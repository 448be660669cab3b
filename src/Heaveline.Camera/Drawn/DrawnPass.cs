using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Figures.Silhouettes;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Camera.Drawn;

/// <summary>A computed crossing as a film shows it: where body and wheels are at any instant. t = 0 when the front wheel centres stand at the
/// hump's foot.</summary>
internal sealed class DrawnPass
{
    // Denser than any film, so that a straight line between two samples is the motion.
    private static readonly PassOptions Dense = new() { Record = new() { SamplesPerSecond = 1000.0, LeadTime = 3.0, SettlingTime = 6.0 } };

    private readonly Pass pass;
    private readonly ImmutableArray<double> front;
    private readonly ImmutableArray<double> rear;
    private readonly ImmutableArray<double> frontWheel;
    private readonly ImmutableArray<double> rearWheel;

    private DrawnPass(Pass pass)
    {
        this.pass = pass;
        (front, rear, frontWheel, rearWheel) = (pass.FrontHeight, pass.RearHeight, pass.WheelHeight(0), pass.WheelHeight(2));
        Shape = Silhouette.Of(pass.Model.Car);
    }

    /// <summary>The car's outline.</summary>
    public Silhouette Shape { get; }

    /// <summary>The road.</summary>
    public Road Road => pass.Road;

    /// <summary>Speed, m/s.</summary>
    public double Speed => pass.Speed;

    /// <summary>What the load is called.</summary>
    public string Load => pass.Model.Load.Name;

    /// <summary>Distance between the axles, m.</summary>
    public double Wheelbase => pass.Model.Car.Wheelbase.Si;

    /// <summary>The car over the road, under the load that it is usually asked about or another.</summary>
    public static DrawnPass Of(Car car, Road road, double speed, LoadState? load = null) =>
        new(Pass.Of(RideModel.Of(car, load ?? LoadedCar.UsualLoad(car)), road, speed, Dense));

    /// <summary>Where everything is at an instant; before and after the record it stands still.</summary>
    public DrawnInstant At(double time)
    {
        var place = Math.Clamp((time - pass.Start) / pass.SampleStep, 0.0, pass.Count - 1.001);
        var k = (int)place;
        double Of(ImmutableArray<double> trace) => trace[k] + ((place - k) * (trace[k + 1] - trace[k]));
        return new DrawnInstant(Speed * time, Of(front), Of(rear), Of(frontWheel), Of(rearWheel));
    }

    /// <summary>Height of the road at a place along it, m.</summary>
    public double RoadHeight(double x) => pass.Road.MetBy(hasTracks: true).Left.Height(x) - pass.Road.MetBy(hasTracks: true).Left.StartHeight;
}
