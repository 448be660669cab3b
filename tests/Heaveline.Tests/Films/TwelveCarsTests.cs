using Heaveline.Figures;
using Heaveline.Films;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Tests.Films;

/// <summary>The figure of an article: which of twelve cars that pass one bump heave, and which pitch?</summary>
public class TwelveCarsTests
{
    private const string Place = "school hump";

    [Fact]
    public void Twelve_cars_at_one_bump_stand_in_order_in_words_table_and_figure_each_with_its_interval()
    {
        var films = Enumerable.Range(0, 12).Select(Filmed).ToArray();
        Kept(films);
        var answer = FilmStudy.Run(
            new FilmAsked { Films = [.. films], Place = Place }, new StudyRun { Cancellation = TestContext.Current.CancellationToken });
        Assert.StartsWith("12 cars seen at school hump, 12 films.", answer.Head[0].Text, StringComparison.Ordinal);
        var bars = (CategoryPanel)answer.Figure(FilmAnswer.List).Panels[0];
        Assert.Equal(12, bars.Categories.Length);
        Assert.All(films, film => Assert.Contains(bars.Categories, c => c.Name.StartsWith(film.Sheet.Seen + ",", StringComparison.Ordinal)));
        var pitch = bars.Categories.Select(c => c.Values[0]).ToArray();
        Assert.Equal(pitch.Select(v => v.Value).Order(), pitch.Select(v => v.Value));
        Assert.All(pitch, v => Assert.True(v.Low < v.Value && v.Value < v.High));
        // With the rear quicker than the front the settling pitches less at this speed; those nearest to each other are not told apart.
        Assert.Contains("car 12", answer.Cars.Cars.Take(4).Select(c => c.Name));
        Assert.Contains(answer.Cars.Cars[^1].Name, new[] { "car 1", "car 2", "car 3" });
        Assert.NotEmpty(answer.Cars.NotTold);
        Assert.DoesNotContain(answer.Cars.NotTold, pair => pair.First.Name == "car 12" && pair.Second.Name == answer.Cars.Cars[^1].Name);
    }

    private static KeptFilm Filmed(int k)
    {
        var car = FilmedCars.WithRatio(FilmedCars.Car("fern-saloon"), 0.95 + (0.04 * k));
        var pass = FilmedCars.Pass(car, "village-hump", 24.0 + (0.2 * k));
        return new KeptFilm(
            new FilmSheet
            {
                Name = FormattableString.Invariant($"pass {k + 1}"),
                Seen = FormattableString.Invariant($"car {k + 1}"),
                Place = Place,
                Wheelbase = pass.Model.Car.Wheelbase,
            },
            new PlantedFilm { Pass = pass, Seed = 40UL + (ulong)k }.Track());
    }

    // For an eye, and to try the command on: into the folder that HEAVELINE_PICTURES names.
    private static void Kept(IEnumerable<KeptFilm> films)
    {
        if (Environment.GetEnvironmentVariable("HEAVELINE_PICTURES") is not { Length: > 0 } folder)
        {
            return;
        }

        foreach (var film in films)
        {
            var stem = Path.Combine(folder, film.Sheet.Seen.Replace(' ', '-'));
            File.WriteAllText(
                stem + ".yaml",
                $"film: {film.Sheet.Name}\nplace: {Place}\nseen: {film.Sheet.Seen}\nwheelbase: {Numeral.Of(film.Sheet.Wheelbase.Si, 3)} m ± 1 cm\n");
            File.WriteAllText(stem + ".csv", TrackText.Of(film.Track));
        }
    }
}
