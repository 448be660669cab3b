using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Quantities;
using Heaveline.Tests.Ties;
using Heaveline.Ties;

namespace Heaveline.Bench;

/// <summary>
/// Cable ties of planted cars: how often the 90 % intervals hold what was planted, how much is learned, how often a right obstacle is refused and a
/// wrong one, or exchanged axles, noticed.
/// </summary>
internal static class TieCover
{
    public static int Run(string[] args)
    {
        var draws = args.Length > 0 ? ulong.Parse(args[0], CultureInfo.InvariantCulture) : 100;
        foreach (var (file, over, speeds) in new (string, string, double[])[]
        {
            ("fern-saloon", "village-hump", [8, 15, 25, 35]),
            ("fern-saloon", "short-bump", [5, 15, 30]),
            ("drover-van", "village-hump", [10, 20, 30]),
        })
        {
            Told(file, over, speeds, draws);
        }

        return 0;
    }

    private static void Told(string file, string over, double[] speeds, ulong draws)
    {
        var car = CarFile.Load(Path.Combine("examples", "garage", file + ".yaml")).Value
            ?? throw new InvalidOperationException($"{file} is refused: run this from the root of the checkout.");
        var (load, road, asked) = (car.LoadStates[^1], NamedRoads.All[over], PlantedTies.At(speeds));
        var other = NamedRoads.All[over == "village-hump" ? "village-hump-100" : "plank"];
        var (cars, refused, wrong, swapped) = (0, 0, 0, 0);
        var held = new SortedDictionary<(AxleEnd, TieNumber), (int Held, double Learned, int Said)>();
        for (ulong seed = 1; seed <= draws; seed++)
        {
            if (Planted() is not { } planted)
            {
                continue;
            }

            var fit = TieFit.Of(car, load, road, planted.Readings, Environment.ProcessorCount);
            cars++;
            refused += fit.IsBelieved ? 0 : 1;
            wrong += TieFit.Of(car, load, other, planted.Readings, Environment.ProcessorCount).IsBelieved ? 0 : 1;
            swapped += TieFit.Of(car, load, road, planted.Readings.Swapped, Environment.ProcessorCount).IsBelieved ? 0 : 1;
            foreach (var (e, truth) in fit.Estimates.Zip(planted.Truth))
            {
                var (inside, learned, said) = held.GetValueOrDefault((e.End, e.Number));
                held[(e.End, e.Number)] = (inside + (truth >= e.Low && truth <= e.High ? 1 : 0), learned + e.Learned, said + (e.IsSaid ? 1 : 0));
            }

            // A car so drawn that it cannot stand or cross is none.
            PlantedTies? Planted()
            {
                try
                {
                    return PlantedTies.Of(car, load, road, asked, seed);
                }
                catch (RefusedValueException)
                {
                    return null;
                }
            }
        }

        Console.WriteLine(FormattableString.Invariant(
            $"{file}, {load.Name}, {over} at {string.Join(", ", speeds)} km/h: {cars} cars; disbelieved {refused}, ")
            + FormattableString.Invariant($"{other.Name} noticed {wrong}, axles exchanged noticed {swapped}"));
        foreach (var ((end, number), (inside, learned, said)) in held)
        {
            Console.WriteLine(FormattableString.Invariant(
                $"  {end} {number}: 90 % intervals hold {inside}; learned {100.0 * learned / cars:F0} %; said {said}"));
        }
    }
}
