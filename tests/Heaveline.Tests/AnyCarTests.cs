using CsCheck;
using Heaveline.Cars;

namespace Heaveline.Tests;

public class AnyCarTests
{
    [Fact]
    public void Drawn_cars_cover_every_kind_of_element()
    {
        var missing = new HashSet<string>(Kinds.Keys);
        AnyCar.Any.Sample(
            car =>
            {
                lock (missing)
                {
                    missing.RemoveWhere(kind => Kinds[kind](car));
                }
            },
            iter: 1000);
        Assert.Empty(missing);
    }

    private static readonly Dictionary<string, Func<Car, bool>> Kinds = new()
    {
        ["two-wheeler"] = c => c.Kind == VehicleKind.TwoWheeler,
        ["solid axle"] = c => c.Rear.Suspension == SuspensionKind.SolidAxle,
        ["independent"] = c => c.Rear.Suspension == SuspensionKind.Independent,
        ["narrow spring base"] = c => c.Front.SpringBase?.Si < c.Front.Track.Si,
        ["bar"] = c => c.Front.AntiRollBar.Si > 0.0,
        ["linear spring"] = c => c.Front.Spring.Law is LinearSpring,
        ["gas spring"] = c => c.Front.Spring.Law is GasSpring,
        ["table spring"] = c => c.Front.Spring.Law is TableSpring,
        ["varying ratio"] = c => c.Front.Spring.MotionRatio.Varies,
        ["table damper"] = c => c.Front.Damper.Law is TableDamper,
        ["ratio damper"] = c => c.Front.Damper.Law is RatioDamper,
        ["damper gas"] = c => c.Front.Damper.GasForce.Si > 0.0,
        ["damper through a ratio"] = c => c.Front.Damper.MotionRatio is { Varies: false, AtReference.Si: not 1.0 },
        ["damper through a varying ratio"] = c => c.Front.Damper.MotionRatio.Varies,
        ["dampers at a place of their own"] = c => c.Front.DamperBase is { } own && own.Si != c.Front.SpringBase?.Si,
        ["stops at a place of their own"] = c => c.Front.StopBase is { } own && own.Si != c.Front.SpringBase?.Si,
        ["straight stop"] = c => c.Front.BumpStop is { Table: null, Exponent.Si: 1.0 },
        ["curved stop"] = c => c.Front.BumpStop is { Exponent.Si: > 1.0 },
        ["table stop"] = c => c.Front.ReboundStop is { Table: not null },
        ["friction"] = c => c.Front.Friction.HalfWidth.Si > 0.0,
        ["elastic link"] = c => c.Interconnection is ElasticLink,
        ["damped link"] = c => c.Interconnection is ElasticLink { Damping.Si: > 0.0 },
        ["opposed link"] = c => c.Interconnection is ElasticLink { RearRatio.Si: < 0.0 },
        ["pipe"] = c => c.Interconnection is FluidLink { Line: { State: LineState.Pipe, Inertance.Si: > 0.0 } },
        ["pipe of resistance alone"] = c => c.Interconnection is FluidLink { Line: { State: LineState.Pipe, Inertance.Si: 0.0 } },
        ["open line"] = c => c.Interconnection is FluidLink { Line.State: LineState.Open },
        ["shut line"] = c => c.Interconnection is FluidLink { Line.State: LineState.Shut },
        ["one-sided weight"] = c => c.Weighing.FrontLeft.Si != c.Weighing.FrontRight.Si,
        ["gravity's arms"] = c => c.Body.RollAxisHeight is not null,
        ["no gravity's arms"] = c => c.Body.RollAxisHeight is null,
    };
}
