using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>
/// How far a car file leaves a number open: by the doubts that it states, and where it states none of the parts that make the number, by what such
/// parts may be off.
/// </summary>
public sealed record FileDoubt
{
    // Enough to tell a half-width to some 6 %.
    private const int Draws = 200;

    /// <summary>The numbers of which a silent part makes a doubt that is taken.</summary>
    internal static IReadOnlyList<CarNumber> Numbers { get; } =
        [CarNumber.FrequencyRatio, CarNumber.PitchIndex, CarNumber.FrontDamping, CarNumber.RearDamping];

    /// <summary>Half-width of the 90 % interval of the number's logarithm, with what is taken of the silent parts.</summary>
    public required double HalfWidth { get; init; }

    /// <summary>The same by the doubts that the file states alone, as the command 'doubt' has it: silent parts count as exact.</summary>
    public required double Stated { get; init; }

    /// <summary>The parts whose doubt the file does not state, with what is taken in its place.</summary>
    public required ImmutableArray<SilentPart> Silent { get; init; }

    /// <summary>What is taken of the silent parts ("its front springs and rear springs as known to ± 5 %"), a clause; empty for none.</summary>
    public string Taken => SilentPart.Words(Silent);

    /// <summary>Whether the silent parts make most of it.</summary>
    internal bool IsMostlySilent => HalfWidth * HalfWidth > 2.0 * Stated * Stated;

    /// <summary>The chance that a number of which 1 parts two ends lies really on the other side of it (–).</summary>
    /// <param name="stated">The number as stated.</param>
    internal double ChanceBeyond(double stated) =>
        1.0 - Gaussian.Max(Math.Abs(Math.Log(stated)), HalfWidth / Gaussian.Ninety, 0.0).Slope;

    /// <summary>That a silent part is what to measure next.</summary>
    /// <param name="name">The number's name.</param>
    internal string MeasureNext(string name)
    {
        var share = 1.0 - (Stated * Stated / (HalfWidth * HalfWidth));
        return $"Measure the {SpeedRanges.And([.. Silent.Select(part => part.Name)])} next: the file states no doubt of them, and with what other "
            + $"commands take for it they make {Numeral.Of(In.Percent.Of(share), 0)} % of the variance of the {name}.";
    }

    /// <summary>The doubt of a number.</summary>
    /// <param name="car">The car under its load.</param>
    /// <param name="number">The number.</param>
    /// <param name="degree">How many cars are computed at once.</param>
    /// <param name="stop">Stops it.</param>
    public static FileDoubt Of(LoadedCar car, CarNumber number, int degree = 1, CancellationToken stop = default) =>
        Of(car, [number], degree, stop)[number];

    /// <summary>The doubts of several numbers, of the same cars drawn.</summary>
    /// <param name="car">The car under its load.</param>
    /// <param name="numbers">The numbers: frequencies on rigid tyres, their ratio, dampings, the dynamic index.</param>
    /// <param name="degree">How many cars are computed at once.</param>
    /// <param name="stop">Stops it.</param>
    public static IReadOnlyDictionary<CarNumber, FileDoubt> Of(
        LoadedCar car, IReadOnlyList<CarNumber> numbers, int degree = 1, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(numbers);
        var study = JointStudy.Of(
            [CarDoubts.Of(car.Car, car.Load)], [.. numbers.Select(Measure)], Draws, seed: 1, degree: degree, cancellation: stop);
        return numbers.Index().ToDictionary(n => n.Item, n =>
        {
            var stated = study.Cars[0][n.Index].Central90 is { Low: > 0.0 } middle ? 0.5 * Math.Log(middle.High / middle.Low) : 1.0;
            (SilentPart Part, double Log)[] silent = [.. SilentParts(car.Car, n.Item)];
            return new FileDoubt
            {
                HalfWidth = Math.Sqrt((stated * stated) + silent.Sum(s => Math.Pow(Gaussian.Ninety * s.Log, 2))),
                Stated = stated,
                Silent = [.. silent.Select(s => s.Part)],
            };
        });
    }

    // What the number's logarithm is off by, one standard deviation: damping goes with the damper, a frequency with the root of its spring.
    private static IEnumerable<(SilentPart Part, double Log)> SilentParts(Car car, CarNumber number)
    {
        foreach (var end in new[] { AxleEnd.Front, AxleEnd.Rear })
        {
            var (axle, name) = (car.Axles[(int)end], end == AxleEnd.Front ? "front" : "rear");
            if (number == (end == AxleEnd.Front ? CarNumber.FrontDamping : CarNumber.RearDamping) && !IsStated(axle.Damper.Law))
            {
                yield return (new($"{name} dampers", TieScale.LeastDamping), TieScale.LeastDamping);
            }

            var own = end == AxleEnd.Front ? CarNumber.FrontFrequency : CarNumber.RearFrequency;
            if ((number == CarNumber.FrequencyRatio || number == own) && !SpringAmounts.IsStated(axle.Spring))
            {
                yield return (new($"{name} springs", TieScale.LeastSpring), 0.5 * TieScale.LeastSpring);
            }
        }

        if (number == CarNumber.PitchIndex && !(car.Body.PitchInertia?.Doubt ?? car.Body.DynamicIndex.Doubt).IsStated)
        {
            var spread = InertiaEstimate.DynamicIndex.Doubt.StandardDeviation / InertiaEstimate.DynamicIndex.Si;
            yield return (new("pitch inertia", spread), spread);
        }
    }

    private static bool IsStated(DamperLaw law) => law switch
    {
        RatioDamper ratio => ratio.Ratio.Doubt.IsStated,
        TableDamper table => table.Factor.Doubt.IsStated || table.Bump.Factor.Doubt.IsStated || table.Rebound.Factor.Doubt.IsStated,
        _ => true,
    };

    // Of the axles on rigid tyres, as a drive tells them.
    private static Measure<CarAtRest> Measure(CarNumber number) => number switch
    {
        CarNumber.PitchIndex => new("index", "dynamic index", In.Plain, 3, c => c.Modes.DynamicIndex, "k²/(b·c)."),
        CarNumber.FrontDamping => AxleCatalogue.Damping(AxleEnd.Front),
        CarNumber.RearDamping => AxleCatalogue.Damping(AxleEnd.Rear),
        CarNumber.FrontFrequency => new(
            "front-rigid", "front frequency on rigid tyres", In.Hertz, 3, c => c.Front.Rates.FrequencyOnRigidTyres, "Front."),
        CarNumber.RearFrequency => new("rear-rigid", "rear frequency on rigid tyres", In.Hertz, 3, c => c.Rear.Rates.FrequencyOnRigidTyres, "Rear."),
        _ => new(
            "ratio-rigid", "frequency ratio on rigid tyres", In.Plain, 3,
            c => c.Rear.Rates.FrequencyOnRigidTyres / c.Front.Rates.FrequencyOnRigidTyres, "Rear over front."),
    };
}
