using Heaveline.Cars;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Tests.Parts;

/// <summary>
/// A car of round numbers and parts for it. 300 kg of body stand on each front wheel: 2941.995 N, which press 21 N/mm of 390 mm by 140.095 mm.
/// </summary>
internal static class Shelf
{
    public const double Carried = 300.0 * 9.80665;

    /// <summary>The plain saloon with a front spring of known length, and stops.</summary>
    public static Car Car { get; } = PlainCar.Saloon with
    {
        Front = PlainCar.FrontAxle with
        {
            Spring = PlainCar.FrontAxle.Spring with { FreeLength = new Amount<Length>(0.390) },
            BumpStop = new Stop { Clearance = new(0.070), Rate = new Amount<Stiffness>(50e3), SolidAfter = new Amount<Length>(0.040) },
            ReboundStop = new Stop { Clearance = new(0.080), Rate = new Amount<Stiffness>(80e3) },
        },
    };

    public static CoilPart Coil { get; } = new()
    {
        Name = "Larch L-24",
        Price = new Money(84m, "EUR"),
        Law = new LinearSpring { Rate = new(24e3) },
        FreeLength = new Amount<Length>(0.380),
    };

    public static DamperPart Damper { get; } = new()
    {
        Name = "Wren W3",
        Price = new Money(310m, "EUR"),
        Clicks = [new(2, Table(100.0, 260.0, 300.0, 700.0)), new(10, Table(180.0, 500.0, 500.0, 1500.0))],
        GasForce = new Amount<Force>(150.0),
        Stroke = new Amount<Length>(0.190),
    };

    public static StopPart Stop { get; } = new()
    {
        Name = "Moss 45",
        Price = new Money(18m, "EUR"),
        Length = new(0.045),
        Curve = new ForceTable([0.0, 0.010, 0.030], [0.0, 200.0, 2000.0]),
        SolidAfter = new Amount<Length>(0.036),
        Cuts = [new(0.0), new(0.009)],
    };

    /// <summary>A damper that is measured at 0.1 and 0.5 m/s.</summary>
    public static TableDamper Table(double slowBump, double fastBump, double slowRebound, double fastRebound) =>
        new(new ForceTable([0.1, 0.5], [slowBump, fastBump]), new ForceTable([0.1, 0.5], [slowRebound, fastRebound]));

    public static FittingResult Fit(PartPlace place, PartOption option) => Fit(Car, place, option);

    public static FittingResult Fit(Car car, PartPlace place, PartOption option) => Fitting.Of(car, [new(place, option)]);

    public static Fitted Fits(PartPlace place, PartOption option) => Assert.IsType<Fitted>(Fit(place, option));

    public static Misfit Misfits(Car car, PartPlace place, PartOption option) => Assert.IsType<Misfit>(Fit(car, place, option));

    /// <summary>The only option of a part.</summary>
    public static PartOption Only(this Part part) => Assert.Single(part.Options);
}
