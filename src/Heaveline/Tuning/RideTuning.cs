using System.Globalization;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>
/// Both axles' frequencies and damping ratios at a trim, as something to be set: applied to a car it scales springs and dampers until the loaded car
/// has them. Progressive springs stay as progressive, bump and rebound in the same proportion; stops, bars, friction and links stay.
/// </summary>
public sealed record RideTuning
{
    private const int MostTries = 12;

    /// <summary>Front ride frequency, the rear held, Hz.</summary>
    public required double FrontFrequency { get; init => field = Checked.Within(value, 0.01, 100.0); }

    /// <summary>Rear ride frequency, the front held, Hz.</summary>
    public required double RearFrequency { get; init => field = Checked.Within(value, 0.01, 100.0); }

    /// <summary>Front damping ratio, mean of bump and rebound (–).</summary>
    public required double FrontDamping { get; init => field = Checked.Within(value, 0.0, 10.0); }

    /// <summary>Rear damping ratio (–).</summary>
    public required double RearDamping { get; init => field = Checked.Within(value, 0.0, 10.0); }

    /// <summary>Whether the frequencies are those of the springs alone; otherwise with the tyres in series.</summary>
    public bool OnRigidTyres { get; init; }

    /// <summary>Mean frequency √(f_f·f_r), Hz.</summary>
    public double MeanFrequency => Math.Sqrt(FrontFrequency * RearFrequency);

    /// <summary>Rear over front frequency (–).</summary>
    public double Ratio => RearFrequency / FrontFrequency;

    /// <summary>Mean damping ratio √(ζ_f·ζ_r) (–).</summary>
    public double MeanDamping => Math.Sqrt(FrontDamping * RearDamping);

    /// <summary>Rear over front damping ratio (–).</summary>
    public double DampingSplit => RearDamping / FrontDamping;

    /// <summary>Another frequency ratio about the same mean.</summary>
    public RideTuning WithRatio(double ratio) =>
        this with { FrontFrequency = MeanFrequency / Math.Sqrt(ratio), RearFrequency = MeanFrequency * Math.Sqrt(ratio) };

    /// <summary>Another mean damping ratio with the same split.</summary>
    public RideTuning WithDamping(double mean) =>
        this with { FrontDamping = FrontDamping * mean / MeanDamping, RearDamping = RearDamping * mean / MeanDamping };

    /// <summary>Another damping split about the same mean.</summary>
    public RideTuning WithDampingSplit(double split) =>
        this with { FrontDamping = MeanDamping / Math.Sqrt(split), RearDamping = MeanDamping * Math.Sqrt(split) };

    /// <summary>What a model has.</summary>
    /// <exception cref="RefusedValueException">An axle's springs give way or carry nothing at this trim: it has no frequency.</exception>
    public static RideTuning Of(RideModel model, bool onRigidTyres = false)
    {
        ArgumentNullException.ThrowIfNull(model);
        var (front, rear) = (Springy(model, AxleEnd.Front), Springy(model, AxleEnd.Rear));
        return new RideTuning
        {
            FrontFrequency = front.Frequency(onRigidTyres),
            RearFrequency = rear.Frequency(onRigidTyres),
            FrontDamping = front.DampingOf(model, 0),
            RearDamping = rear.DampingOf(model, 2),
            OnRigidTyres = onRigidTyres,
        };
    }

    /// <summary>
    /// The same car and load with these frequencies and damping ratios. It stands empty as high as before: under a bought spring the packing follows.
    /// </summary>
    /// <param name="model">Car and load.</param>
    /// <param name="lengthsKept">Whether bought springs keep their lengths and seats instead, and the height follows.</param>
    /// <exception cref="RefusedValueException">
    /// Springs alone cannot make them: a link or a touched stop is stiffer already, or the tyre is too soft.
    /// </exception>
    public RideModel ApplyTo(RideModel model, bool lengthsKept = false)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Damped(Sprung(model, lengthsKept));
    }

    private static AxleState Springy(RideModel model, AxleEnd end)
    {
        var axle = AxleState.Of(model, end);
        if (!(axle.Mass > 0.0))
        {
            throw new RefusedValueException(
                end == AxleEnd.Front ? "front sprung load" : "rear sprung load",
                string.Create(CultureInfo.InvariantCulture, $"{axle.Mass:F0} kg under '{model.Load.Name}'"),
                "above 0 kg at the trim",
                "The body hangs on that axle in place of standing on it, and has no frequency there: check where the load lies.");
        }

        return axle.Rate > 0.0
            ? axle
            : throw new RefusedValueException(
                end == AxleEnd.Front ? "front rate" : "rear rate",
                string.Create(CultureInfo.InvariantCulture, $"{axle.Rate:G4} N/m"),
                "above 0 N/m at the trim",
                "Its motion ratio falls so fast that the springs give way: check its change with travel.");
    }

    // Another rate at the same lengths would lift or lower the car, and its sag would answer for the frequency.
    private static Axle[] Turned(Car start, IReadOnlyList<double> factor, IReadOnlyList<double>? heights) => [.. start.Axles.Select((axle, i) =>
    {
        var law = ScaledLaws.Stiffer(axle.Spring.Law, factor[i]);
        return axle with { Spring = heights is null ? axle.Spring.WithLaw(law) : axle.Spring.Packed(law, heights[i]) };
    })];

    // Travel of the springs of both axles as the empty car stands, mean of both sides.
    private static double[] Standing(Car car)
    {
        var travel = car.HasSwap() ? RideModel.Of(car).Trim.Travel : [0.0, 0.0, 0.0, 0.0];
        return [.. car.Axles.Select((axle, i) => axle.Spring.MotionRatio.Travel(0.5 * (travel[2 * i] + travel[(2 * i) + 1])))];
    }

    private RideModel Sprung(RideModel model, bool lengthsKept)
    {
        var start = model.Car;
        double[]? heights = null;
        double[] factor = [1.0, 1.0];
        double[] lastFactor = [0.0, 0.0];
        double[] lastRate = [0.0, 0.0];
        for (var n = 0; n < MostTries; n++)
        {
            var done = true;
            for (var i = 0; i < 2; i++)
            {
                var axle = AxleState.Of(model, (AxleEnd)i);
                var wanted = axle.RateFor(i == 0 ? FrontFrequency : RearFrequency, OnRigidTyres, i == 0 ? "front" : "rear");
                if (Math.Abs(axle.Rate - wanted) <= 1e-9 * wanted)
                {
                    continue;
                }

                done = false;
                // The rate is a straight function of the spring's factor but for the trim's shift: a secant meets it in a few steps.
                var slope = n == 0 || axle.Rate == lastRate[i] ? axle.Rate / factor[i] : (axle.Rate - lastRate[i]) / (factor[i] - lastFactor[i]);
                (lastFactor[i], lastRate[i]) = (factor[i], axle.Rate);
                factor[i] += (wanted - axle.Rate) / slope;
                if (!(factor[i] > 1e-3 && factor[i] < 1e3))
                {
                    throw Unreachable((AxleEnd)i);
                }
            }

            if (done)
            {
                return model;
            }

            heights ??= lengthsKept ? null : Standing(start);
            var axles = Turned(start, factor, heights);
            model = RideModel.Of(start with { Front = axles[0], Rear = axles[1] }, model.Load);
        }

        var missed = AxleState.Of(model, AxleEnd.Front);
        var off = Math.Abs(missed.Frequency(OnRigidTyres) - FrontFrequency) > 1e-4 * FrontFrequency;
        var rear = AxleState.Of(model, AxleEnd.Rear);
        return off || Math.Abs(rear.Frequency(OnRigidTyres) - RearFrequency) > 1e-4 * RearFrequency
            ? throw Unreachable(off ? AxleEnd.Front : AxleEnd.Rear)
            : model;
    }

    private RideModel Damped(RideModel model)
    {
        var front = Factor(model, FrontDamping, AxleEnd.Front);
        var rear = Factor(model, RearDamping, AxleEnd.Rear);
        if (Math.Abs(front - 1.0) < 1e-12 && Math.Abs(rear - 1.0) < 1e-12)
        {
            return model;
        }

        var car = model.Car;
        return RideModel.Of(
            car with
            {
                Front = car.Front with { Damper = car.Front.Damper with { Law = ScaledLaws.Stronger(car.Front.Damper.Law, front) } },
                Rear = car.Rear with { Damper = car.Rear.Damper with { Law = ScaledLaws.Stronger(car.Rear.Damper.Law, rear) } },
            },
            model.Load);
    }

    // A link's damper stays: the axle's own make up the rest.
    private static double Factor(RideModel model, double wanted, AxleEnd end)
    {
        var (axle, first, name) = (AxleState.Of(model, end), 2 * (int)end, end == AxleEnd.Front ? "front" : "rear");
        var (now, link) = (axle.DampingOf(model, first), axle.LinkDampingOf(model, first));
        if (wanted == now)
        {
            return 1.0;
        }

        if (wanted < link)
        {
            throw new RefusedValueException(
                $"{name} damping",
                string.Create(CultureInfo.InvariantCulture, $"{wanted:G4}"),
                FormattableString.Invariant($"at least {link:G4}, which the link's damper makes"),
                "Take damping out of the link.");
        }

        return now > link
            ? (wanted - link) / (now - link)
            : throw new RefusedValueException(
                $"{name} damper",
                "without any force",
                "a damper with some force",
                "A damper without force cannot be scaled; give it a table or a damping ratio.");
    }

    private RefusedValueException Unreachable(AxleEnd end) => new(
        $"{(end == AxleEnd.Front ? "front" : "rear")} frequency",
        FormattableString.Invariant($"{(end == AxleEnd.Front ? FrontFrequency : RearFrequency):0.###} Hz"),
        "within reach of the springs",
        "A link, a touched stop, the tyre, or a kink of the spring's table where its rate jumps, leaves the springs no way to make it.");
}
