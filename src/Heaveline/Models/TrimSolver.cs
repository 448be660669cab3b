using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Models;

/// <summary>
/// Nonlinear static equilibrium of body, wheels and fluid by Newton's method on the elements' forces and their exact slopes. Unknowns: heave,
/// pitch, roll of the body, heights of the four wheels, fluid gone from front to rear on each side; all from the reference state, about the loaded
/// centre of gravity. Friction is at the middle of the band in which it holds the car.
/// </summary>
internal static class TrimSolver
{
    private const double Tolerance = 1e-9;

    // So many elements are looked at without room of their own.
    private const int Usual = 32;

    /// <param name="car">The car.</param>
    /// <param name="load">Its load state.</param>
    /// <param name="body">The loaded body.</param>
    /// <param name="elements">The car's elements.</param>
    /// <param name="push">What pushes it besides its weight; null for standing.</param>
    public static TrimSolution Solve(Car car, LoadState load, SprungBody body, ElementList elements, StaticPush? push = null) =>
        Solve(car, load, RideNumbers.Static(car, body, elements), push);

    /// <param name="car">The car.</param>
    /// <param name="load">Its load state.</param>
    /// <param name="numbers">The loaded car's numbers in its reference state.</param>
    /// <param name="push">What pushes it besides its weight; null for standing.</param>
    public static TrimSolution Solve(Car car, LoadState load, RideNumbers numbers, StaticPush? push = null)
    {
        RefuseTipping(car, load, numbers.Body);
        const int n = TrimBalance.Unknowns;
        var count = numbers.Elements.Each().Length;
        Span<double> rows = count <= Usual ? stackalloc double[count * n] : new double[count * n];
        Span<ElementMean> blind = count <= Usual ? stackalloc ElementMean[count] : new ElementMean[count];
        var balance = new TrimBalance(car, numbers, push ?? StaticPush.None, rows, blind);
        Span<double> unknown = stackalloc double[n];
        Span<double> residual = stackalloc double[n];
        Span<double> step = stackalloc double[n];
        Span<double> tangent = stackalloc double[n * n];
        unknown.Clear();
        if (Drop(numbers.Elements) is > 0.0 and var drop)
        {
            unknown[0] = -drop;
        }

        balance.At(unknown, residual, tangent);
        for (var pass = 0; pass < 100; pass++)
        {
            var miss = Miss(residual);
            if (miss < Tolerance)
            {
                var trim = balance.Solution(unknown);
                // A wheel in the air leaves no stiffness under it: say that first.
                TrimChecks.RefuseOutOfTravel(car, load, numbers.Elements, trim);
                TrimChecks.RefuseUnstable(load, numbers, tangent);
                return trim;
            }

            residual.CopyTo(step);
            Elimination.Solve(tangent, step);
            foreach (var value in step)
            {
                if (!double.IsFinite(value))
                {
                    throw NotFound(load);
                }
            }

            Shorten(balance, unknown, step, miss, residual, tangent);
        }

        throw NotFound(load);
    }

    // Springs that do not reach both their seats in the reference state hold nothing there: begin where all of them are pressed.
    private static double Drop(ElementList elements)
    {
        const double pressed = 0.010;
        var loose = 0.0;
        for (var i = 0; i < elements.Springs.Count; i++)
        {
            loose = Math.Max(loose, elements.Springs[i].Touch is { } at && at > -pressed ? at + pressed : 0.0);
        }

        return loose;
    }

    private static RefusedValueException NotFound(LoadState load) => new(
        "load state",
        $"'{load.Name}'",
        "a load that the springs can carry in balance",
        "No standing position was found: the car would tip over or fall through its travel.");

    // A step past the end of a gas spring makes NaN, and must not count as balance.
    private static double Miss(ReadOnlySpan<double> residual)
    {
        var sum = 0.0;
        foreach (var value in residual)
        {
            sum += value * value;
        }

        return Math.Sqrt(sum);
    }

    // Halves the step until the imbalance falls; corners of the force laws can make a full step overshoot.
    // What is left over where it ends stays.
    private static void Shorten(
        TrimBalance balance, Span<double> at, ReadOnlySpan<double> step, double miss, Span<double> residual, Span<double> tangent)
    {
        Span<double> from = stackalloc double[TrimBalance.Unknowns];
        at.CopyTo(from);
        for (var part = 1.0; ; part *= 0.5)
        {
            for (var i = 0; i < from.Length; i++)
            {
                at[i] = from[i] - (part * step[i]);
            }

            balance.At(at, residual, tangent);
            if (!(part > 1e-4) || Miss(residual) < miss)
            {
                return;
            }
        }
    }

    // A load outside the wheelbase or the track cannot be balanced by wheels that only push.
    private static void RefuseTipping(Car car, LoadState load, SprungBody body)
    {
        var unsprungFront = car.Front.UnsprungMass.Si;
        var unsprungRear = car.Rear.UnsprungMass.Si;
        var onRear = (body.Mass * body.BehindFrontAxle / car.Wheelbase.Si) + unsprungRear;
        var total = body.Mass + unsprungFront + unsprungRear;
        if (onRear <= 0.0 || onRear >= total)
        {
            throw new RefusedValueException(
                "load state",
                $"'{load.Name}' with {total - onRear:G4} kg on the front and {onRear:G4} kg on the rear axle",
                "above 0 kg on each axle",
                "The car would tip over an axle: move the load or make it lighter.");
        }
    }
}
