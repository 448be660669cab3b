using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Measures;

/// <summary>A car standing at its trim, with what can be said of it without driving, each computed when first asked for. For one thread.</summary>
public sealed class CarAtRest
{
    private readonly AxleState?[] axles = new AxleState?[2];
    private AxleRide? front;
    private AxleRide? rear;
    private BodyModes? modes;
    private SideEffects? side;

    /// <summary>Of a model.</summary>
    public CarAtRest(RideModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        Model = model;
    }

    /// <summary>Car and load at trim.</summary>
    public RideModel Model { get; }

    /// <summary>The front axle by itself.</summary>
    public AxleRide Front => front ??= AxleRide.Of(Model, AxleEnd.Front);

    /// <summary>The rear axle by itself.</summary>
    public AxleRide Rear => rear ??= AxleRide.Of(Model, AxleEnd.Rear);

    /// <summary>Ride frequency of an axle with its tyres, the other held, Hz; NaN where its springs give way.</summary>
    public double Frequency(AxleEnd end) => State(end).Frequency(onRigidTyres: false);

    /// <summary>Damping ratio of an axle, mean of bump and rebound (–); NaN where its springs give way.</summary>
    public double DampingRatio(AxleEnd end) => State(end).DampingOf(Model, 2 * (int)end);

    /// <summary>The modes that its own are followed from; null: the slower is the first.</summary>
    public BodyModes? ModesLike { get; init; }

    /// <summary>The body modes.</summary>
    public BodyModes Modes => modes ??= BodyModes.Of(Model) is var own && ModesLike is { } other ? own.Like(other) : own;

    /// <summary>What it does besides riding.</summary>
    public SideEffects SideEffects => side ??= SideEffects.Of(Model);

    /// <summary>An axle by itself.</summary>
    public AxleRide Axle(AxleEnd end) => end == AxleEnd.Front ? Front : Rear;

    private AxleState State(AxleEnd end) => axles[(int)end] ??= AxleState.Of(Model, end);
}
