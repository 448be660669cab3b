using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Rides;

/// <summary>The demo saloon on gas springs: on the roughest roads its gas would be pressed to nothing, and no linear car moves as it does.</summary>
internal static class GasFern
{
    public static Car Fern { get; } = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;

    public static Car OnGas { get; } = Fern with { Front = Gas(Fern.Front), Rear = Gas(Fern.Rear) };

    private static Axle Gas(Axle axle) => axle with
    {
        Spring = axle.Spring with { Law = new GasSpring { Area = new(0.002), Volume = new(0.0002), Exponent = new(1.4) } },
    };
}
