using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Tests.Doubts;

/// <summary>Linear cars whose values carry the doubts of garage measurements.</summary>
internal static class MeasuredCar
{
    /// <summary>A saloon by its masses and frequencies.</summary>
    public static SimpleCar Saloon { get; } = new()
    {
        SprungMass = 1200.0, Wheelbase = 2.6, BehindFrontAxle = 1.196, DynamicIndex = 0.95, FrontUnsprung = 80.0, RearUnsprung = 80.0,
        FrontTyreRate = 400e3, RearTyreRate = 400e3, MeanFrequency = 1.25,
    };

    /// <summary>The same car with stated doubts, given as shares of the values (half-widths).</summary>
    public static Car With(SimpleCar simple, double spring, double ratio, double mass, double damping = 0.0, double tyre = 0.0, string? scale = null)
    {
        var car = simple.ToCar();
        Amount<Mass> Weighed(Amount<Mass> w, string axle) => w.WithDoubt(mass * w.Si, scale ?? axle);
        return car with
        {
            Weighing = new Weighing
            {
                FrontLeft = Weighed(car.Weighing.FrontLeft, "front axle"), FrontRight = Weighed(car.Weighing.FrontRight, "front axle"),
                RearLeft = Weighed(car.Weighing.RearLeft, "rear axle"), RearRight = Weighed(car.Weighing.RearRight, "rear axle"),
            },
            Body = car.Body with { RollInertia = new Amount<Inertia>(400.0) },
            Front = AxleWith(car.Front, simple.FrontDamping),
            Rear = AxleWith(car.Rear, simple.RearDamping),
        };

        Axle AxleWith(Axle axle, double zeta) => axle with
        {
            Spring = new Spring
            {
                Law = axle.Spring.Law is LinearSpring law ? law with { Rate = law.Rate.WithDoubt(spring * law.Rate.Si) } : axle.Spring.Law,
                MotionRatio = new MotionRatio { AtReference = new Amount<Plain>(1.0).WithDoubt(ratio) },
            },
            Damper = new Damper { Law = new RatioDamper { Ratio = new Amount<Plain>(zeta).WithDoubt(damping * zeta) } },
            Tyre = axle.Tyre with { Rate = axle.Tyre.Rate.WithDoubt(tyre * axle.Tyre.Rate.Si) },
        };
    }
}
