using System.Globalization;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Rules;

/// <summary>
/// The linear car of textbooks: a body on two axles with linear springs, dampers and tyres, given by frequencies and ratios instead of parts. It is a
/// real <see cref="Car"/> with few elements, run by the same model. Frequencies are those of the springs alone, on rigid tyres.
/// </summary>
public sealed record SimpleCar
{
    private const double Track = 1.5;

    /// <summary>Sprung mass, kg.</summary>
    public required double SprungMass { get; init => field = Checked.Within(value, 1.0, 1e5); }

    /// <summary>Wheelbase L, m.</summary>
    public required double Wheelbase { get; init => field = Checked.Within(value, 0.5, 10.0); }

    /// <summary>Sprung centre of gravity behind the front axle, m.</summary>
    public required double BehindFrontAxle { get; init => field = Checked.Within(value, 0.01, 10.0); }

    /// <summary>Dynamic index k²/(b·c) (–).</summary>
    public double DynamicIndex { get; init => field = Checked.Within(value, 0.05, 5.0); } = 1.0;

    /// <summary>Unsprung mass of the front axle, kg.</summary>
    public required double FrontUnsprung { get; init => field = Checked.Within(value, 1e-3, 1e4); }

    /// <summary>Unsprung mass of the rear axle, kg.</summary>
    public required double RearUnsprung { get; init => field = Checked.Within(value, 1e-3, 1e4); }

    /// <summary>Rate of both front tyres together, N/m.</summary>
    public required double FrontTyreRate { get; init => field = Checked.Within(value, 1.0, 1e12); }

    /// <summary>Rate of both rear tyres together, N/m.</summary>
    public required double RearTyreRate { get; init => field = Checked.Within(value, 1.0, 1e12); }

    /// <summary>Mean frequency √(f_f·f_r) of the springs alone, Hz.</summary>
    public required double MeanFrequency { get; init => field = Checked.Within(value, 0.05, 20.0); }

    /// <summary>Rear over front frequency (–).</summary>
    public double Ratio { get; init => field = Checked.Within(value, 0.1, 10.0); } = 1.0;

    /// <summary>Front damping ratio c/(2√(k·m)) (–).</summary>
    public double FrontDamping { get; init => field = Checked.Within(value, 0.0, 5.0); } = 0.3;

    /// <summary>Rear damping ratio (–).</summary>
    public double RearDamping { get; init => field = Checked.Within(value, 0.0, 5.0); } = 0.3;

    /// <summary>
    /// Share s of each axle's stiffness in heave that a common spring of front and rear carries (–), 0 to 0.95. Heave stays as stiff; in pitch the
    /// common spring gives nothing when both axles are alike.
    /// </summary>
    public double SharedSprings { get; init => field = Checked.Within(value, 0.0, 0.95); }

    /// <summary>
    /// Share q of the damping in heave that a common damper of front and rear carries (–), 0 to 0.95. It works where the common spring does, so that
    /// each axle gives its part as its spring's; the axle's own dampers keep the rest, and heave stays as damped at both ends.
    /// </summary>
    public double SharedDamping { get; init => field = Checked.Within(value, 0.0, 0.95); }

    /// <summary>Sprung mass on the front axle, kg.</summary>
    public double FrontMass => SprungMass * (Wheelbase - BehindFrontAxle) / Wheelbase;

    /// <summary>Sprung mass on the rear axle, kg.</summary>
    public double RearMass => SprungMass * BehindFrontAxle / Wheelbase;

    /// <summary>
    /// The linear car with a model's masses, frequencies, damping ratios and tyres at its trim; without friction,
    /// stops, gravity's arms and damper tables.
    /// </summary>
    public static SimpleCar From(RideModel model)
    {
        var tuning = RideTuning.Of(model, onRigidTyres: true);
        return new SimpleCar
        {
            SprungMass = model.Body.Mass,
            Wheelbase = model.Car.Wheelbase.Si,
            BehindFrontAxle = model.Body.BehindFrontAxle,
            DynamicIndex = model.Body.PitchInertia / (model.Body.Mass * model.X[0] * -model.X[2]),
            FrontUnsprung = model.Car.Front.UnsprungMass.Si,
            RearUnsprung = model.Car.Rear.UnsprungMass.Si,
            FrontTyreRate = SuspensionRates.TyresOf(model, AxleEnd.Front),
            RearTyreRate = SuspensionRates.TyresOf(model, AxleEnd.Rear),
            MeanFrequency = tuning.MeanFrequency,
            Ratio = tuning.Ratio,
            FrontDamping = tuning.FrontDamping,
            RearDamping = tuning.RearDamping,
        };
    }

    /// <summary>The car at its trim.</summary>
    public RideModel Model() => RideModel.Of(ToCar());

    /// <summary>The car.</summary>
    /// <exception cref="RefusedValueException">The centre of gravity is not between the axles.</exception>
    public Car ToCar()
    {
        var (front, rear) = (FrontMass, RearMass);
        Checked.Within(BehindFrontAxle, 0.0, Wheelbase, "The centre of gravity lies between the axles.", nameof(BehindFrontAxle));
        var frontRate = Rate(front, MeanFrequency / Math.Sqrt(Ratio));
        var rearRate = Rate(rear, MeanFrequency * Math.Sqrt(Ratio));
        var link = Link(frontRate, rearRate, Damping(FrontDamping, frontRate, front), Damping(RearDamping, rearRate, rear));
        return new Car
        {
            Name = "linear car",
            Wheelbase = new(Wheelbase),
            Weighing = Weighing.PerAxle(new(front + FrontUnsprung), new(rear + RearUnsprung)),
            Body = new Body
            {
                CentreHeight = new(0.55),
                PitchInertia = new Amount<Inertia>(DynamicIndex * SprungMass * BehindFrontAxle * (Wheelbase - BehindFrontAxle)),
            },
            Front = AxleOf(FrontUnsprung, frontRate, Own(Damping(FrontDamping, frontRate, front), link, link.FrontRatio, "front"), FrontTyreRate),
            Rear = AxleOf(RearUnsprung, rearRate, Own(Damping(RearDamping, rearRate, rear), link, link.RearRatio, "rear"), RearTyreRate),
            Interconnection = SharedSprings > 0.0 || SharedDamping > 0.0 ? link : null,
        };
    }

    // In heave both travels are s: forces ρ_f(ρ_f + ρ_r)k·s and ρ_r(ρ_f + ρ_r)k·s shall be the share of each axle's own. With ρ_f + ρ_r = 2 the
    // ratios stand as the rates do. One link a side: half of the axles' rates each.
    private ElasticLink Link(double front, double rear, double frontDamping, double rearDamping) => new()
    {
        Rate = new(0.5 * SharedSprings * (front + rear) / 4.0),
        Damping = new(0.5 * SharedDamping * (frontDamping + rearDamping) / 4.0),
        FrontRatio = new(2.0 * front / (front + rear)),
        RearRatio = new(2.0 * rear / (front + rear)),
    };

    // What is left of an axle's damping, N s/m, when the links of both sides give theirs in heave: 2·ρ·(ρ_f + ρ_r)·c, with ρ_f + ρ_r = 2.
    private static double Own(double damping, ElasticLink link, Amount<Plain> ratio, string end)
    {
        var left = damping - (4.0 * ratio.Si * link.Damping.Si);
        return left >= 0.0
            ? left
            : throw new RefusedValueException(
                "shared damping",
                string.Create(CultureInfo.InvariantCulture, $"more than the {end} has"),
                "at most what each axle has",
                "Share less of the damping: the axle with the stiffer spring gives more of it.");
    }

    private Axle AxleOf(double unsprung, double rate, double damping, double tyre)
    {
        var c = 0.5 * damping;
        var line = new ForceTable([1.0, 2.0], [c, 2.0 * c]);
        return new Axle
        {
            Track = new(Track),
            UnsprungMass = new(unsprung),
            Spring = new Spring { Law = new LinearSpring { Rate = new(0.5 * rate * (1.0 - SharedSprings)) } },
            Damper = new Damper { Law = new TableDamper(line, line) },
            Tyre = new Tyre { Rate = new(0.5 * tyre) },
        };
    }

    private static double Damping(double ratio, double rate, double mass) => 2.0 * ratio * Math.Sqrt(rate * mass);

    private static double Rate(double mass, double frequency) => mass * Math.Pow(2.0 * Math.PI * frequency, 2);
}
