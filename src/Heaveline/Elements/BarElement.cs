using Heaveline.Cars;

namespace Heaveline.Elements;

/// <summary>The anti-roll bar of an axle, F = k·(S_left − S_right).</summary>
internal static class BarElement
{
    /// <summary>The bar of an axle; null without one, and on a two-wheeler.</summary>
    public static Element? Of(Car car, AxleEnd end)
    {
        var rate = (end == AxleEnd.Front ? car.Front : car.Rear).AntiRollBar.Si;
        var left = 2 * (int)end;
        if (rate == 0.0 || car.Kind == VehicleKind.TwoWheeler)
        {
            return null;
        }

        // Wheels moving against each other feel it twice.
        var felt = new double[4];
        felt[left] = felt[left + 1] = 2.0;
        return new Element
        {
            Name = "anti-roll bar",
            Cause = StepCause.AntiRollBar,
            Corner = left,
            Sight = Sight.Across(left),
            OnTravel = [new StraightLaw { Slope = rate }],
            Felt = felt,
        };
    }
}
