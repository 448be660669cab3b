using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Rules;

/// <summary>One thing about a car changed, the rest kept. Each takes a model and gives another at its own trim.</summary>
internal static class ModelChange
{
    public static double DynamicIndexOf(RideModel model) => model.Body.PitchInertia / (model.Body.Mass * model.X[0] * -model.X[2]);

    /// <summary>Another dynamic index of the loaded body: the body's own inertia makes the difference.</summary>
    public static RideModel DynamicIndex(RideModel model, double index) =>
        RideModel.Of(WithInertia(model.Car, model, index * model.Body.Mass * model.X[0] * -model.X[2]), model.Load);

    /// <summary>
    /// Another wheelbase with every place along the car in proportion; the pitch inertia grows with its square (the index is kept) or stays.
    /// </summary>
    public static RideModel Wheelbase(RideModel model, double wheelbase, bool inertiaGrows)
    {
        var factor = wheelbase / model.Car.Wheelbase.Si;
        Amount<Length> Placed(Amount<Length> x) => x.Times(factor);
        var car = model.Car with
        {
            Wheelbase = Placed(model.Car.Wheelbase),
            Body = model.Car.Body with { PitchInertia = new Amount<Inertia>(SprungBody.Of(model.Car).PitchInertia) },
            Seats = [.. model.Car.Seats.Select(s => s with { BehindFrontAxle = Placed(s.BehindFrontAxle) })],
        };
        var load = Along(model.Load, factor);
        var longer = RideModel.Of(car, load);
        return RideModel.Of(WithInertia(car, longer, model.Body.PitchInertia * (inertiaGrows ? factor * factor : 1.0)), load);
    }

    /// <summary>A load with its places along the car in proportion.</summary>
    public static LoadState Along(LoadState load, double factor) =>
        load with { Loads = [.. load.Loads.Select(l => l with { BehindFrontAxle = l.BehindFrontAxle.Times(factor) })] };

    /// <summary>
    /// No interconnection: each axle's own springs and dampers take over what the link gave it in heave, so that heave stays as stiff and as damped.
    /// </summary>
    public static RideModel WithoutLink(RideModel model)
    {
        var k = SuspensionRates.InHeave(model);
        double Frequency(int i) => Math.Sqrt((k[i, 0] + k[i, 1]) / AxleState.Of(model, (AxleEnd)i).Mass) / (2.0 * Math.PI);
        var bare = RideModel.Of(model.Car with { Interconnection = null }, model.Load);
        var now = RideTuning.Of(bare, onRigidTyres: true);
        var sprung = now with { FrontFrequency = Frequency(0), RearFrequency = Frequency(1) };
        // The dampers keep their force and take over a common damper's: both as ratios of the new rates, 2·√(k·m) = 4π·f·m.
        var shared = SuspensionRates.ByAxle(model.Tangent.SuspensionDamping - Tangent.WithoutInterconnection(model.Numbers).Damping);
        double Shared(int i, double frequency) => (shared[i, 0] + shared[i, 1]) / (4.0 * Math.PI * frequency * AxleState.Of(model, (AxleEnd)i).Mass);
        return (sprung with
        {
            FrontDamping = (sprung.FrontDamping * now.FrontFrequency / sprung.FrontFrequency) + Shared(0, sprung.FrontFrequency),
            RearDamping = (sprung.RearDamping * now.RearFrequency / sprung.RearFrequency) + Shared(1, sprung.RearFrequency),
        }).ApplyTo(bare);
    }

    public static RideModel WithoutFriction(RideModel model) => BothEnds(model, (a, _) => a with { Friction = Friction.None });

    public static RideModel WithoutStops(RideModel model) => BothEnds(model, (a, _) => a with { BumpStop = null, ReboundStop = null });

    /// <summary>Tyres so many times as stiff as their axle's springs at trim.</summary>
    public static RideModel TyreRatio(RideModel model, double ratio) => BothEnds(model, (a, end) =>
    {
        var state = AxleState.Of(model, end);
        return a with { Tyre = a.Tyre with { Rate = a.Tyre.Rate.Times(ratio * state.Rate / state.TyreRate) } };
    });

    private static RideModel BothEnds(RideModel model, Func<Axle, AxleEnd, Axle> change) => RideModel.Of(
        model.Car with { Front = change(model.Car.Front, AxleEnd.Front), Rear = change(model.Car.Rear, AxleEnd.Rear) }, model.Load);

    private static Car WithInertia(Car car, RideModel loaded, double wanted)
    {
        var own = SprungBody.Of(car).PitchInertia;
        return car with { Body = car.Body with { PitchInertia = new Amount<Inertia>(wanted - (loaded.Body.PitchInertia - own)) } };
    }
}
