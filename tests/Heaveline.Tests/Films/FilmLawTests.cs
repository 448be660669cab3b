using Heaveline.Drives.Identification;
using Heaveline.Films;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Tests.Films;

/// <summary>Which terms the dampers have by the films, and why one fit with all of them is told.</summary>
public class FilmLawTests
{
    private static readonly string[] Cars = ["fern-saloon", "fern-saloon-cured", "sprig-kit-car", "thimble-city-car", "tarn-off-roader"];

    private static readonly CarNumber[] Numbers =
        [CarNumber.FrontFrequency, CarNumber.RearFrequency, CarNumber.FrequencyRatio, CarNumber.PitchIndex];

    // The wheels of a planted film, and between them a half car whose law is known.
    private static SeenPass Between(ulong seed, double split, double friction)
    {
        var (pass, seen) = FilmedCars.Drawn(FilmedCars.Car(Cars[(int)(seed % 5)]), seed);
        _ = pass;
        double Any(ulong k) => SplitMix.Uniform((seed * 31) + 7, k);
        double[] car =
        [
            Math.Log(1.0 + (0.6 * Any(0))), Math.Log(1.0 + (0.6 * Any(1))), Math.Log(0.2 + (0.2 * Any(2))), Math.Log(0.2 + (0.2 * Any(3))),
            0.85 + (0.3 * Any(4)), split, split, friction, friction, 0.5 + (0.06 * Any(5)),
        ];
        var (_, heights) = FilmFit.Derivatives(WheelDrive.Of(seen), car);
        double Noisy(int i) => heights[i] + (seen.BodyNoise * SplitMix.Normals(seed + 5, 2UL * (ulong)i).First);
        return seen with
        {
            FrontBody = [.. Enumerable.Range(0, seen.Count).Select(Noisy)],
            RearBody = [.. Enumerable.Range(seen.Count, seen.Count).Select(Noisy)],
        };
    }

    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(0.35, 0.0)]
    [InlineData(0.0, 0.4)]
    [InlineData(0.35, 0.4)]
    public void A_term_that_is_there_is_not_denied_and_one_that_is_not_is_not_told_of_nineteen_films_of_twenty(double split, double friction)
    {
        var (wrong, right) = (new int[2], new int[2]);
        for (var seed = 0UL; seed < 20; seed++)
        {
            var odds = CarFromFilm.Of([Between(seed, split, friction)], new FilmGiven { Wheelbase = new(2.7) }, TestContext.Current.CancellationToken)
                .Odds;
            if (odds is { } o)
            {
                foreach (var (term, (log, isThere)) in new[] { (o.Split, split > 0.0), (o.Friction, friction > 0.0) }.Index())
                {
                    wrong[term] += Math.Abs(log) > LawOdds.Tells && (log > 0.0) != isThere ? 1 : 0;
                    right[term] += Math.Abs(log) > LawOdds.Tells && (log > 0.0) == isThere ? 1 : 0;
                }
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"split {wrong[0]} wrong, {right[0]} right; friction {wrong[1]} wrong, {right[1]} right");
        Assert.All(wrong, w => Assert.True(w <= 1, $"{string.Join(" and ", wrong)} of 20 wrong, {string.Join(" and ", right)} right"));
        Assert.All(right, r => Assert.True(r >= 16, $"{string.Join(" and ", right)} of 20 right"));
    }

    // Fits of one law each, on planted films of whole cars: bench/runs has a hundred.
    [Fact]
    public void A_law_without_the_terms_is_refused_of_most_planted_films_and_one_fit_of_all_terms_of_none()
    {
        var refused = new Dictionary<FilmLaw, int>();
        var (held, said) = (0, 0);
        foreach (var law in Enum.GetValues<FilmLaw>())
        {
            for (var seed = 0UL; seed < 15; seed++)
            {
                var (pass, seen) = FilmedCars.Drawn(FilmedCars.Car(Cars[(int)(seed % 5)]), seed);
                var car = new FilmIdentification([seen], FilmedCars.Given(pass), TestContext.Current.CancellationToken, law).Found();
                refused[law] = refused.GetValueOrDefault(law) + (car.IsBelieved ? 0 : 1);
                held += law == FilmLaw.Whole ? Numbers.Count(n => Holds(car, pass, n)) : 0;
                said += law == FilmLaw.Whole ? Numbers.Length : 0;
            }
        }

        Assert.Equal(0, refused[FilmLaw.Whole]);
        Assert.True(refused[FilmLaw.Linear] >= 8, $"linear {refused[FilmLaw.Linear]}");
        Assert.True(refused[FilmLaw.Friction] >= 8, $"friction {refused[FilmLaw.Friction]}");
        Assert.True(held >= 0.85 * said, $"{held} of {said}");
    }

    private static bool Holds(CarFromFilm car, Pass pass, CarNumber number) =>
        car.Of(number) is { IsSaid: true } e && CarFromFilmTests.Own(pass.Model, number) is var own && e.Low <= own && own <= e.High;
}
