using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;

namespace Heaveline.Measures;

/// <summary>
/// Where the wheels hang with the body on stands: each at the balance of its weight, springs, gas and bars against its rebound stop, which gives way
/// past its touch. Friction is at the middle of its band; through a fluid line nothing flows.
/// </summary>
internal static class HangingWheels
{
    private const double Closeness = 1e-12;
    private const int MostSweeps = 60;
    private const int MostSteps = 100;

    // A wheel that a stop has not caught so far down is not caught at all, m.
    private const double Deepest = 2.0;

    /// <summary>Travel of each wheel from the reference state, m, negative; not a number at an axle whose rebound stop is not described.</summary>
    /// <param name="model">The car under any load: its body hangs on the stands, so the load does not count.</param>
    public static double[] Of(RideModel model) => Of(model.Car, model.Numbers.Elements);

    /// <summary>The same of a car and the list of its elements.</summary>
    public static double[] Of(Car car, ElementList elements)
    {
        var travel = new double[4];
        for (var sweep = 0; sweep < MostSweeps; sweep++)
        {
            var moved = 0.0;
            for (var i = 0; i < 4; i++)
            {
                if (elements.ReboundStops[i] is null || double.IsNaN(travel[i]))
                {
                    continue;
                }

                var was = travel[i];
                travel[i] = Hang(car, elements, travel, i);
                moved = Math.Max(moved, Math.Abs(travel[i] - was));
            }

            if (!(moved > Closeness))
            {
                break;
            }
        }

        return [.. travel.Select((at, i) => elements.ReboundStops[i] is null ? double.NaN : at)];
    }

    // The balance of one wheel, the others held: what pushes it down falls as it goes down.
    private static double Hang(Car car, ElementList elements, double[] travel, int i)
    {
        var weight = 0.5 * car.Axles[i / 2].UnsprungMass.Si * Gravity.Standard;
        double Down(double at) => weight + Push(elements, [.. travel.Select((s, k) => k == i ? at : double.IsNaN(s) ? 0.0 : s)], i);
        var least = elements.ReboundLimit[i];
        var (low, high) = (Math.Max(least, -Deepest), Math.Max(0.0, travel[i]));
        if (Down(low) >= 0.0)
        {
            return double.IsFinite(least) ? least : double.NaN;
        }

        for (var step = 0; step < MostSteps && high - low > Closeness; step++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Down(middle) < 0.0 ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    private static double Push(ElementList elements, double[] travel, int wheel)
    {
        var sum = 0.0;
        foreach (var element in elements.Each())
        {
            if (element.Sight.Wheels[wheel] is not 0.0 and var share)
            {
                sum += share * element.StandingAt(element.Sight.Of(travel, [0.0, 0.0]));
            }
        }

        return sum;
    }
}
