#region using
using Heaveline;
using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Roads;
#endregion

namespace Samples;

/// <summary>What docs/library.md shows, region by region. The parameter bears the name of the console that a program writes to.</summary>
internal static class CarInCode
{
    public static void Run(TextWriter Console)
    {
        #region car
        var front = new Axle
        {
            Track = Length.FromMetres(1.48),
            UnsprungMass = Mass.FromKilograms(72),
            Spring = new Spring { Law = new LinearSpring { Rate = Stiffness.FromNewtonsPerMillimetre(21) } },
            Damper = new Damper
            {
                // m/s at the damper, and N
                Law = new TableDamper(
                    bump: new ForceTable([0.1, 1.0], [110, 620]),
                    rebound: new ForceTable([0.1, 1.0], [230, 1400])),
            },
            Tyre = new Tyre { Rate = Stiffness.FromNewtonsPerMillimetre(190) },
        };
        var car = new Car
        {
            Name = "my saloon",
            Wheelbase = Length.FromMillimetres(2620),
            Weighing = Weighing.PerAxle(Mass.FromKilograms(690), Mass.FromKilograms(590)),
            Body = new Body { CentreHeight = Length.FromMillimetres(550) },
            Front = front,
            Rear = front with { Spring = new Spring { Law = new LinearSpring { Rate = Stiffness.FromNewtonsPerMillimetre(19) } } },
            Seats = [new Seat { Name = "driver", BehindFrontAxle = Length.FromMetres(1.35), Height = Length.FromMetres(0.55) }],
        };
        var twoBehind = new LoadState
        {
            Name = "two behind",
            Loads =
            [
                new Load
                {
                    Name = "passengers",
                    Mass = Mass.FromKilograms(150),
                    BehindFrontAxle = Length.FromMetres(2.3),
                    Height = Length.FromMetres(0.6),
                },
            ],
        };
        #endregion

        #region pass
        var hump = Road.From(new RoundTopHump { Height = Length.FromMillimetres(60), Length = Length.FromMetres(3.7) });
        var pass = Ask.Pass(car, hump, Velocity.FromKilometresPerHour(40), twoBehind);

        var headline = pass["settling-rms-pitch"];
        Console.WriteLine($"{headline.Label}: {headline}");
        Console.WriteLine($"greatest vertical acceleration of the driver: {pass["driver-peak-vertical"]}");
        Console.WriteLine($"at {pass.RearLeaves:F2} s of {pass.Time[^1]:F2} s the rear wheels leave the hump");
        #endregion

        #region why
        var why = Ask.Why(car, hump, Velocity.FromKilometresPerHour(40), twoBehind);
        foreach (var (id, text) in why.Sentences.Take(3))
        {
            Console.WriteLine($"{id}: {text}");
        }
        #endregion

        #region cost
        var stiffer = car with
        {
            Name = "stiffer rear",
            Rear = car.Rear with { Spring = new Spring { Law = new LinearSpring { Rate = Stiffness.FromNewtonsPerMillimetre(27) } } },
        };
        var cost = Ask.Cost(car, stiffer, twoBehind);
        Console.WriteLine($"{cost["roll-stiffness"].Label}: {cost["roll-stiffness", car.Name]}, then {cost["roll-stiffness", stiffer.Name]}");
        #endregion
    }
}
