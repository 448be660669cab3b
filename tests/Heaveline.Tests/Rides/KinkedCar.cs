using Heaveline.Cars;

namespace Heaveline.Tests.Rides;

/// <summary>The plain saloon with dampers of unlike slopes and stops that a rough road reaches.</summary>
internal static class KinkedCar
{
    /// <summary>The car.</summary>
    public static Car Of()
    {
        var damper = new Damper
        {
            Law = new TableDamper(new ForceTable([0.1, 0.3, 1.0], [130.0, 300.0, 700.0]), new ForceTable([0.1, 0.3, 1.0], [270.0, 640.0, 1500.0])),
        };
        var stop = new Stop { Clearance = new(0.05), Rate = new(60000.0) };
        return PlainCar.Saloon with
        {
            Front = PlainCar.FrontAxle with { Damper = damper, BumpStop = stop, ReboundStop = stop },
            Rear = PlainCar.RearAxle with { Damper = damper, BumpStop = stop, ReboundStop = stop },
        };
    }
}
