using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>A car with the springs and dampers of a kit on it, as designed or as they came out of the shop.</summary>
internal static class FittedKit
{
    /// <summary>The car with springs and dampers of which nothing is in doubt: what they are is what the maker promises.</summary>
    public static Car AsDesigned(Car car) => car with { Front = Exact(car.Front), Rear = Exact(car.Rear) };

    /// <summary>The car with parts that are off, each end by its own errors; both sides of an axle alike.</summary>
    /// <param name="car">The car that they are fitted to.</param>
    /// <param name="tolerance">How far they may be off.</param>
    /// <param name="errors">Errors in standard deviations, shape (6): springs, dampers, heights, each front and rear.</param>
    /// <exception cref="RefusedValueException">A part that cannot be.</exception>
    public static Car On(Car car, KitTolerance tolerance, IReadOnlyList<double> errors) => car with
    {
        Front = Off(car.Front, tolerance, errors[0], errors[2], errors[4]),
        Rear = Off(car.Rear, tolerance, errors[1], errors[3], errors[5]),
    };

    private static Axle Off(Axle axle, KitTolerance tolerance, double spring, double damper, double height)
    {
        var law = tolerance.Springs == 0.0 ? axle.Spring.Law : ScaledLaws.Stiffer(axle.Spring.Law, 1.0 + (0.5 * tolerance.Springs * spring));
        // Higher is longer. A gas spring's height is its pressure's, not its length's: it is set when it is filled.
        var lost = axle.Spring.Law is GasSpring ? 0.0 : -0.5 * tolerance.Heights * height * axle.Spring.MotionRatio.AtReference.Si;
        return axle with
        {
            Spring = axle.Spring.WithLaw(law) with { LostLength = axle.Spring.LostLength + lost },
            Damper = tolerance.Dampers == 0.0
                ? axle.Damper
                : axle.Damper with { Law = ScaledLaws.Stronger(axle.Damper.Law, 1.0 + (0.5 * tolerance.Dampers * damper)) },
        };
    }

    private static Axle Exact(Axle axle) => axle with
    {
        Spring = axle.Spring.WithLaw(axle.Spring.Law switch
        {
            LinearSpring spring => spring with { Rate = spring.Rate.WithDoubt(0.0), Dimensions = null },
            TableSpring table => new TableSpring(table.Table.Under(table.Table.Factor.WithDoubt(0.0))),
            var gas => gas,
        }),
        Damper = axle.Damper with
        {
            Law = axle.Damper.Law switch
            {
                RatioDamper ratio => ratio with { Ratio = ratio.Ratio.WithDoubt(0.0), ReboundPerBump = ratio.ReboundPerBump.WithDoubt(0.0) },
                TableDamper table => table.Under(table.Factor.WithDoubt(0.0)),
                var other => other,
            },
        },
    };
}
