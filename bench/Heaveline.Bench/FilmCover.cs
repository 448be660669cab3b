using System.Globalization;
using Heaveline.Cars;
using Heaveline.Drives.Identification;
using Heaveline.Films;
using Heaveline.Passes;
using Heaveline.Studies;
using Heaveline.Tests.Films;

namespace Heaveline.Bench;

/// <summary>
/// Planted films of five example cars by lot, each fitted by the law of one term, of the other, of neither and of both: how many are refused, and how
/// often the 90 % intervals of those that are not hold the car file's own numbers; the same by the law that the odds of each film speak for, and what
/// those odds are.
/// </summary>
internal static class FilmCover
{
    private static readonly string[] Names = ["fern-saloon", "fern-saloon-cured", "sprig-kit-car", "thimble-city-car", "tarn-off-roader"];

    private static readonly CarNumber[] Numbers =
    [
        CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.PitchIndex, CarNumber.FrontDamping,
        CarNumber.RearDamping,
    ];

    public static int Run(string[] args)
    {
        var films = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 100;
        var found = new Film[films];
        Parallel.For(0, films, seed =>
        {
            var (pass, seen) = FilmedCars.Drawn(FilmedCars.Car(Names[seed % Names.Length]), (ulong)seed);
            found[seed] = new Film(
                pass,
                CarBeside.Of(LoadedCar.Of(pass.Model.Car)),
                [
                    .. Enum.GetValues<FilmLaw>().Select(law =>
                        new FilmIdentification([seen], FilmedCars.Given(pass), CancellationToken.None, law).Found()),
                ]);
        });

        Console.WriteLine($"| law | not believed | {string.Join(" | ", Numbers)} |");
        Console.WriteLine($"|---|--:|{string.Concat(Numbers.Select(_ => "--:|"))}");
        foreach (var law in Enum.GetValues<FilmLaw>())
        {
            Row(law.ToString(), found, f => f.ByLaw[(int)law]);
        }

        Row("by the odds", found, f => f.ByOdds);
        Console.WriteLine();
        Odds("a split, which all five cars have", found, o => o.Split);
        Odds("friction, cars that have it", [.. found.Where(f => f.HasFriction)], o => o.Friction);
        Odds("friction, cars that have none and dampers steeper at small speeds", [.. found.Where(f => !f.HasFriction)], o => o.Friction);
        return 0;
    }

    private static void Row(string name, Film[] films, Func<Film, CarFromFilm> of)
    {
        var (refused, held, said, wide) = (0, new int[Numbers.Length], new int[Numbers.Length], new double[Numbers.Length]);
        foreach (var film in films)
        {
            var car = of(film);
            refused += car.IsBelieved ? 0 : 1;
            foreach (var (k, number) in Numbers.Index())
            {
                if (car.Of(number) is { IsSaid: true } e && film.Own.Of(number) is { } value)
                {
                    said[k]++;
                    held[k] += e.Low <= value && value <= e.High ? 1 : 0;
                    wide[k] += 0.5 * (number == CarNumber.PitchIndex ? e.High - e.Low : Math.Log(e.High / e.Low));
                }
            }
        }

        var cells = Numbers.Select((_, k) => string.Create(
            CultureInfo.InvariantCulture, $"{held[k]} of {said[k]}, ± {(said[k] > 0 ? 100.0 * wide[k] / said[k] : double.NaN):F1} %"));
        Console.WriteLine($"| {name} | {refused} of {films.Length} | {string.Join(" | ", cells)} |");
    }

    private static void Odds(string of, Film[] films, Func<LawOdds, double> log)
    {
        var odds = films.Select(f => f.ByLaw[(int)FilmLaw.Whole].Odds).OfType<LawOdds>().Select(log).ToList();
        Console.WriteLine(
            $"Odds beyond 20 to 1 for {of}: for it in {odds.Count(o => o > LawOdds.Tells)} and against it in "
            + $"{odds.Count(o => o < -LawOdds.Tells)} of {films.Length} films, not told in "
            + $"{films.Length - odds.Count(o => Math.Abs(o) > LawOdds.Tells)}.");
    }

    private sealed record Film(Pass Pass, CarBeside Own, CarFromFilm[] ByLaw)
    {
        public bool HasFriction => Pass.Model.Car.Front.Friction != Friction.None || Pass.Model.Car.Rear.Friction != Friction.None;

        // The law that the film's odds speak for, term by term.
        public CarFromFilm ByOdds => ByLaw[(int)FilmLaw.Whole].Odds is not { } odds ? ByLaw[(int)FilmLaw.Whole]
            : ByLaw[(int)((odds.Split > 0.0, odds.Friction > 0.0) switch
            {
                (true, true) => FilmLaw.Whole,
                (true, false) => FilmLaw.Split,
                (false, true) => FilmLaw.Friction,
                _ => FilmLaw.Linear,
            })];
    }
}
