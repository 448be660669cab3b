using System.Numerics;
using Heaveline.Models;

namespace Heaveline.Passes;

/// <summary>A wave of the road as the four wheels meet it: averaged over each contact length, the rear a wheelbase later.</summary>
internal static class WheelWaves
{
    /// <summary>Height that each wheel gets of a wave of 1 m under the front wheel centres: sinc(πnc)·e^{−i2πnL} at the rear.</summary>
    public static Complex[] Of(RideModel model, double n)
    {
        var front = new Complex(Sinc(Math.PI * n * model.Car.Front.Tyre.ContactLength.Si), 0.0);
        var rear = Complex.FromPolarCoordinates(
            Sinc(Math.PI * n * model.Car.Rear.Tyre.ContactLength.Si), -2.0 * Math.PI * n * model.Car.Wheelbase.Si);
        return [front, front, rear, rear];
    }

    /// <summary>sin x/x: what the average over a contact length c leaves of a wave, x = πnc.</summary>
    public static double Sinc(double x) => Math.Abs(x) < 1e-4 ? 1.0 - (x * x / 6.0) : Math.Sin(x) / x;
}
