using System.Globalization;
using Heaveline.Drives.Identification;
using Heaveline.Films;
using Heaveline.Studies;
using Heaveline.Tests.Films;

namespace Heaveline.Bench;

/// <summary>
/// Planted films of five example cars by lot, each fitted by the law of one term, of the other, of neither and of both: how many are refused, and how
/// often the 90 % intervals of those that are not hold the car file's own numbers.
/// </summary>
internal static class FilmCover
{
    private static readonly string[] Cars = ["fern-saloon", "fern-saloon-cured", "sprig-kit-car", "thimble-city-car", "tarn-off-roader"];

    private static readonly CarNumber[] Numbers =
    [
        CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.PitchIndex, CarNumber.FrontDamping,
        CarNumber.RearDamping,
    ];

    public static int Run(string[] args)
    {
        var films = args.Length > 0 ? ulong.Parse(args[0], CultureInfo.InvariantCulture) : 100;
        Console.WriteLine($"| law | refused | {string.Join(" | ", Numbers)} |");
        Console.WriteLine($"|---|--:|{string.Concat(Numbers.Select(_ => "--:|"))}");
        foreach (var law in Enum.GetValues<FilmLaw>())
        {
            var (refused, held, said, wide) = (0, new int[Numbers.Length], new int[Numbers.Length], new double[Numbers.Length]);
            for (var seed = 0UL; seed < films; seed++)
            {
                var (pass, seen) = FilmedCars.Drawn(FilmedCars.Car(Cars[(int)(seed % (ulong)Cars.Length)]), seed);
                var car = new FilmIdentification([seen], FilmedCars.Given(pass), CancellationToken.None, law).Found();
                var own = CarBeside.Of(LoadedCar.Of(pass.Model.Car));
                refused += car.IsBelieved ? 0 : 1;
                foreach (var (k, number) in Numbers.Index())
                {
                    if (car.Of(number) is { IsSaid: true } e && own.Of(number) is { } value)
                    {
                        said[k]++;
                        held[k] += e.Low <= value && value <= e.High ? 1 : 0;
                        wide[k] += 0.5 * (number == CarNumber.PitchIndex ? e.High - e.Low : Math.Log(e.High / e.Low));
                    }
                }
            }

            var cells = Numbers.Select((_, k) => string.Create(
                CultureInfo.InvariantCulture, $"{held[k]} of {said[k]}, ± {(said[k] > 0 ? 100.0 * wide[k] / said[k] : double.NaN):F1} %"));
            Console.WriteLine($"| {law} | {refused} of {films} | {string.Join(" | ", cells)} |");
        }

        return 0;
    }
}
