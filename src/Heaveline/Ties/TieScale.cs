using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Ties;

/// <summary>
/// One number of the car that ties may move, by a coordinate that is normal before the readings and in which travels run nearly straight: the
/// logarithm of a damper's or a spring's factor, the part by which friction is off, metres of clearance.
/// The car file's doubt is taken twice, and never less than what a worn part may be off: the readings must be able to contradict the file.
/// </summary>
internal sealed class TieScale
{
    /// <summary>Least standard deviation of ln(damping): a worn or a warm damper (common practice, no source).</summary>
    public const double LeastDamping = 0.25;

    /// <summary>Least standard deviation of friction, a part of it: it is seldom measured well (common practice, no source).</summary>
    public const double LeastFriction = 0.5;

    /// <summary>Least standard deviation of a clearance, m (common practice, no source).</summary>
    public const double LeastClearance = 5e-3;

    /// <summary>Least standard deviation of ln(spring rate): a sagged or a wrong spring (common practice, no source).</summary>
    public const double LeastSpring = 0.05;

    private TieScale(TieNumber number, AxleEnd end, double file, double spread) => (Number, End, File, Spread) = (number, end, file, spread);

    public TieNumber Number { get; }

    public AxleEnd End { get; }

    /// <summary>As the file has it: a factor of one, N or m.</summary>
    public double File { get; }

    /// <summary>Standard deviation of the coordinate before the readings.</summary>
    public double Spread { get; }

    /// <summary>The numbers of a car that readings may move.</summary>
    public static IReadOnlyList<TieScale> Of(Car car, TieReadings readings)
    {
        var all = new List<TieScale>();
        foreach (var end in new[] { AxleEnd.Front, AxleEnd.Rear })
        {
            var axle = car.Axles[(int)end];
            var law = axle.Damper.Law switch
            {
                RatioDamper ratio => Relative(ratio.Ratio),
                TableDamper table => Relative(table.Factor),
                _ => 0.0,
            };
            all.Add(new TieScale(TieNumber.Damping, end, 1.0, Math.Max(2.0 * law, LeastDamping)));
            if (axle.Friction.HalfWidth.Si > 0.0)
            {
                all.Add(new TieScale(
                    TieNumber.Friction, end, axle.Friction.HalfWidth.Si, Math.Max(2.0 * Relative(axle.Friction.HalfWidth), LeastFriction)));
            }

            if (axle.BumpStop is { } stop)
            {
                all.Add(new TieScale(
                    TieNumber.BumpStop, end, stop.Clearance.Si, Math.Max(2.0 * stop.Clearance.Doubt.StandardDeviation, LeastClearance)));
            }

            if (readings.Swings.Any(s => s.End == end) || readings.Heights.Any(h => h.End == end))
            {
                all.Add(new TieScale(TieNumber.Spring, end, 1.0, Math.Max(2.0 * SpringDoubt(axle.Spring.Law), LeastSpring)));
            }
        }

        return all;
    }

    /// <summary>The number at a coordinate.</summary>
    public double ValueAt(double coordinate) => Number switch
    {
        TieNumber.BumpStop => Math.Max(0.0, File + coordinate),
        TieNumber.Friction => File * Math.Max(0.0, 1.0 + coordinate),
        _ => File * Math.Exp(coordinate),
    };

    /// <summary>The car with the number at a coordinate.</summary>
    public Car At(Car car, double coordinate) => Moved(car, axle => Number switch
    {
        TieNumber.Damping => axle with { Damper = axle.Damper with { Law = ScaledLaws.Stronger(axle.Damper.Law, Math.Exp(coordinate)) } },
        TieNumber.Friction => axle with
        {
            Friction = axle.Friction with { HalfWidth = new Amount<Force>(axle.Friction.HalfWidth.Si * Math.Max(0.0, 1.0 + coordinate)) },
        },
        TieNumber.BumpStop when axle.BumpStop is { } stop => axle with
        {
            BumpStop = stop with { Clearance = new Amount<Length>(Math.Max(0.0, stop.Clearance.Si + coordinate)) },
        },
        TieNumber.Spring => axle with { Spring = axle.Spring.WithLaw(ScaledLaws.Stiffer(axle.Spring.Law, Math.Exp(coordinate))) },
        _ => axle,
    });

    /// <summary>The car without the doubt of this number: the coordinate holds it.</summary>
    public Car Bare(Car car) => Moved(car, axle => Number switch
    {
        TieNumber.Damping => axle with { Damper = axle.Damper with { Law = Bare(axle.Damper.Law) } },
        TieNumber.Friction => axle with { Friction = axle.Friction with { HalfWidth = new(axle.Friction.HalfWidth.Si) } },
        TieNumber.BumpStop when axle.BumpStop is { } stop => axle with { BumpStop = stop with { Clearance = new(stop.Clearance.Si) } },
        TieNumber.Spring => axle with { Spring = axle.Spring.WithLaw(Bare(axle.Spring.Law)) },
        _ => axle,
    });

    private static DamperLaw Bare(DamperLaw law) => law switch
    {
        RatioDamper ratio => ratio with { Ratio = new(ratio.Ratio.Si) },
        TableDamper table => table.Under(new Amount<Plain>(table.Factor.Si)),
        _ => law,
    };

    private static SpringLaw Bare(SpringLaw law) => law switch
    {
        LinearSpring spring => spring with { Rate = new(spring.Rate.Si), Dimensions = null },
        TableSpring table => new TableSpring(table.Table.Under(new Amount<Plain>(table.Table.Factor.Si))),
        _ => law,
    };

    // What dimensions say of a rate comes to a few per cent, which is below the least anyway.
    private static double SpringDoubt(SpringLaw law) => law switch
    {
        LinearSpring spring => Relative(spring.Rate),
        TableSpring table => Relative(table.Table.Factor),
        _ => 0.0,
    };

    private static double Relative<TDimension>(Amount<TDimension> amount)
        where TDimension : struct, IDimension => amount.Si > 0.0 ? amount.Doubt.StandardDeviation / amount.Si : 0.0;

    private Car Moved(Car car, Func<Axle, Axle> change) =>
        End == AxleEnd.Front ? car with { Front = change(car.Front) } : car with { Rear = change(car.Rear) };
}
