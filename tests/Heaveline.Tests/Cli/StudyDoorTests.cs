using Heaveline.Answers;
using Heaveline.Cli.Output;
using Heaveline.Drives;
using Heaveline.Files.Cars;
using Heaveline.Files.Drives;
using Heaveline.Files.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;
using Heaveline.Tests.House;
using Heaveline.Ties;

namespace Heaveline.Tests.Cli;

/// <summary>A command says what a program is told that runs the study itself, byte for byte.</summary>
public class StudyDoorTests
{
    private static readonly string Saloon = Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml");
    private static readonly string Cured = Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon-cured.yaml");

    [Fact]
    public void Why() => Same(
        WhyStudy.Run(new WhyAsked { Car = Car(Saloon, "driver"), Road = NamedRoads.Find("plank").Value!, Speed = 40.0 / 3.6 }),
        "why", Saloon, "--road", "plank", "--speed", "40 km/h", "--load", "driver");

    [Fact]
    public void Cure() => Same(
        CureStudy.Run(new CureAsked
        {
            Car = Car(Saloon, "driver"), Road = NamedRoads.Find("plank").Value!, Speed = 30.0 / 3.6, Aim = CureAim.Hit, Draws = 30, Seed = 4,
        }),
        "cure", Saloon, "--road", "plank", "--speed", "30 km/h", "--load", "driver", "--measure", "hit", "--samples", "30", "--seed", "4");

    [Fact]
    public void Choose()
    {
        var (saloon, list) = (CarFile.Load(Saloon).Value!, Path.Combine(Checkout.Root, "examples", "parts", "village-autumn.yaml"));
        Same(
            ChooseStudy.Run(new ChooseAsked
            {
                Car = saloon,
                Lists = [Heaveline.Files.Parts.PartsFile.Load(list).Value!],
                Open = [Heaveline.Parts.PartPlace.RearDamper],
                Roads = [new("plank", NamedRoads.Find("plank").Value!, [30.0 / 3.6])],
                Loads = [saloon.LoadStates[0]],
                Draws = 12,
                Seed = 4,
            }),
            "choose", Saloon, "--parts", list, "--open", "rear damper", "--use", "plank at 30 km/h", "--load", "driver", "--draws", "12",
            "--seed", "4");
    }

    [Fact]
    public void Doubt() => Same(
        DoubtStudy.Run(new DoubtAsked { Car = Car(Saloon, "driver"), Draws = 40, Seed = 9 }),
        "doubt", Saloon, "--load", "driver", "--samples", "40", "--seed", "9");

    [Fact]
    public void Cost() => Same(
        CostStudy.Run(new CostAsked { Cars = [Car(Saloon, "driver"), Car(Cured, "driver")], Draws = 40 }),
        "cost", Saloon, Cured, "--load", "driver", "--samples", "40");

    [Fact]
    public void Tolerance() => Same(
        ToleranceStudy.Run(new ToleranceAsked
        {
            Car = Car(Saloon, "driver"),
            Promises = [new() { Measure = Heaveline.Measures.AxleCatalogue.FrequencyRatio, IsLeast = true, Limit = 1.0 }],
            Springs = [new(0.01), new(0.03)],
            Dampers = [new(0.1)],
            Heights = [new(0.005)],
            Draws = 100,
            Seed = 4,
        }),
        "tolerance", Saloon, "--load", "driver", "--promise", "ratio at least 1", "--springs", "1 %, 3 %", "--dampers", "10 %", "--heights", "5 mm",
        "--samples", "100", "--seed", "4");

    [Fact]
    public void Years() => Same(
        YearsStudy.Run(new YearsAsked { Car = Car(Saloon, "driver"), Wear = new() { RearSag = new(0.001) }, Draws = 50, Years = 4, Seed = 3 }),
        "years", Saloon, "--load", "driver", "--rear-sag", "1 mm", "--samples", "50", "--years", "4", "--seed", "3");

    [Fact]
    public void Link()
    {
        var car = Path.Combine(Checkout.Root, "examples", "garage", "pebble-fluid-car.yaml");
        Same(LinkStudy.Run(new LinkAsked { Car = Car(car, "driver") }), "link", car, "--load", "driver");
    }

    [Fact]
    public void Plank() => Same(PlankStudy.Run(new PlankAsked { Car = Car(Saloon, "driver") }), "plank", Saloon, "--load", "driver");

    [Fact]
    public void Plan() => Same(
        PlanStudy.Run(new PlanAsked
        {
            Car = Car(Saloon, "driver"),
            Change = Car(Cured, "driver"),
            Humps = [new() { Name = "speed table", Road = NamedRoads.Find("speed-table").Value! }],
            Number = Heaveline.Drives.Identification.CarNumber.PitchIndex,
        }),
        "plan", Saloon, "--load", "driver", "--change", Cured, "--hump", "speed-table", "--tells", "index");

    [Fact]
    public void Ties()
    {
        var asked = new TiesAsked
        {
            Car = Car(Saloon, "driver"),
            Road = NamedRoads.Find("short-bump").Value!,
            Readings = new TieReadings
            {
                Passes =
                [
                    new TiePass
                    {
                        Speed = new(20.0 / 3.6),
                        Readings = [new TieReading { Place = TiePlace.Front, Travel = Heaveline.Quantities.Length.FromMillimetres(31.0) }],
                    },
                ],
            },
        };
        Same(
            TiesStudy.Run(asked with { CarFile = "fern-saloon.yaml" }),
            "ties", Saloon, "--load", "driver", "--over", "short-bump", "--pass", "20 km/h: front 31 mm");
    }

    [Fact]
    public void Worksheet()
    {
        var asked = new BounceAsked { Swings = Heaveline.Quantities.Plain.FromNumber(5.0), Time = Heaveline.Quantities.Time.FromSeconds(3.9) };
        Same(BounceStudy.Run(asked), "worksheet", "bounce", "--swings", "5", "--time", "3.9 s");
    }

    [Fact]
    public void Prove()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch["before.csv"], LaneWriter.Whole(LarchLane.Before.Log));
        File.WriteAllText(scratch["after.csv"], LaneWriter.Whole(LarchLane.NoChange.Log));
        var asked = new ProveAsked { Before = Log(scratch["before.csv"]), After = Log(scratch["after.csv"]), Same = ["fuel"] };
        Same(ProveStudy.Run(asked), "prove", "--before", scratch["before.csv"], "--after", scratch["after.csv"], "--same", "fuel");
    }

    private static Log Log(string path) => LogFile.Load([path], TestContext.Current.CancellationToken).Log!;

    private static void Same(Answer answer, params string[] line)
    {
        Assert.Equal(answer.Json(Release.Version, line[0]) + "\n", Spoken.Of([.. line, "--json"]).Results);
        Assert.Equal(string.Concat(answer.Lines.Select(l => l.ReplaceLineEndings("\n") + "\n")), Spoken.Of(line).Results);
    }

    private static LoadedCar Car(string path, string load)
    {
        var car = CarFile.Load(path).Value!;
        return LoadedCar.Of(car, car.LoadStates.Single(l => l.Name == load));
    }
}
