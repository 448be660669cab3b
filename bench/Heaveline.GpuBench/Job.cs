using Heaveline.Bench;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.GpuBench;

/// <summary>
/// The measured job: the bench saloon with springs, damping and bars by drawn factors, ten seconds over a random road of class C in two tracks at ten
/// speeds from 40 to 85 km/h.
/// </summary>
internal static class Job
{
    public const int Speeds = 10;
    public const double Seconds = 10.0;

    public static Road Road { get; } = Road.From(new RandomRoad
    {
        Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(1.5), Length = new(260.0), LeadIn = new(5.0), Seed = 7,
    });

    /// <summary>Two numbers that a search asks for.</summary>
    public static Measure<Pass>[] Few { get; } = [WholePassCatalogue.RmsPitch, WholePassCatalogue.RmsPitchAcceleration];

    /// <summary>And 22 of them: body, load and travel of every wheel.</summary>
    public static Measure<Pass>[] Many { get; } =
    [
        WholePassCatalogue.RmsPitch, WholePassCatalogue.PeakPitch, WholePassCatalogue.RmsPitchAcceleration,
        WholePassCatalogue.PeakPitchAcceleration, WholePassCatalogue.RmsHeaveAcceleration, WholePassCatalogue.PeakHeaveAcceleration,
        .. WheelPlace.Each(true).SelectMany(place => WheelCatalogue.Of(place).Where(m => Parts.Exists(m.Key.EndsWith))),
    ];

    private static List<string> Parts => ["bump-margin", "rebound-margin", "least-load", "load-variation"];

    /// <summary>Speed of a table, m/s.</summary>
    public static double Speed(int table) => (40.0 + (5.0 * table)) / 3.6;

    /// <summary>Car number i: a function of i alone.</summary>
    public static Car Car(int i)
    {
        var draw = new Random(i);
        var (front, rear, damping, bars) = (Between(0.75, 1.35), Between(0.75, 1.35), Between(0.6, 1.5), Between(0.0, 2.0));
        var car = Saloon.Of();
        return car with { Front = Axle(car.Front, front, damping, bars), Rear = Axle(car.Rear, rear, damping, bars) };

        double Between(double low, double high) => low + ((high - low) * draw.NextDouble());
    }

    /// <summary>How they run.</summary>
    public static PassOptions Options(double samplesPerSecond, double step, bool inSingle = false) => new()
    {
        Method = FixedStep.Once with { LargestStep = step, InSingle = inSingle },
        Record = new() { Duration = Seconds, SamplesPerSecond = samplesPerSecond },
    };

    private static Axle Axle(Axle axle, double springs, double damping, double bars)
    {
        var (spring, damper) = ((LinearSpring)axle.Spring.Law, (TableDamper)axle.Damper.Law);
        return axle with
        {
            Spring = axle.Spring with { Law = new LinearSpring { Rate = new(springs * spring.Rate.Si) } },
            Damper = axle.Damper with { Law = new TableDamper(Scaled(damper.Bump), Scaled(damper.Rebound)) },
            AntiRollBar = new Amount<Stiffness>(bars * axle.AntiRollBar.Si),
        };

        ForceTable Scaled(ForceTable table) => new([.. table.At], [.. table.Force.Select(f => damping * f)]);
    }
}
