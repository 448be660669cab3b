using Heaveline.Figures.Silhouettes;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>
/// A pass as a run of pictures, for whoever shows it where no page runs: the vehicle from its side driving to the right, movements of road, wheels
/// and body enlarged from how it stood, over its pitch curve with a line at the moment.
/// </summary>
public static class PassFilm
{
    /// <summary>How many times as large as they are movements are drawn.</summary>
    public const double Enlarged = 3.0;

    /// <summary>How many times as long as the pass takes the film takes; its caption says a quarter of the speed.</summary>
    public const double Slower = 4.0;

    /// <summary>How long each picture is shown, s: sixteen a second, so that an eye sees one movement.</summary>
    public const double Shown = 1.0 / 16.0;

    // Once it has settled nothing is seen any more, and a film of minutes is none.
    private const double After = 1.6;
    private const double Longest = 8.0;

    /// <summary>The pictures, in the order of time, each shown for <see cref="Shown"/>.</summary>
    /// <param name="pass">The pass.</param>
    /// <param name="measures">Its numbers.</param>
    /// <exception cref="RefusedValueException">The pass has no two good samples.</exception>
    public static IEnumerable<Figure> Of(Pass pass, PassMeasures measures)
    {
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(measures);
        PassFigure.Drawn(pass);
        var (from, to) = (pass.Time[0], Math.Min(pass.Time[^1], Math.Min(pass.RearLeaves + After, pass.Time[0] + Longest)));
        var count = 1 + (int)Math.Floor(Slower * (to - from) / Shown);
        var (scene, whole) = (new FilmScene(pass, Enlarged), PassFigure.Of(pass, measures));
        var pitch = whole.Panels.OfType<ChartPanel>().First(panel => panel.Id == "pitch") with { Height = 24.0 };
        var load = pass.Model.Load.Name;
        for (var i = 0; i < count; i++)
        {
            var time = from + (i * Shown / Slower);
            yield return whole with
            {
                Title = $"{whole.Title}, {load}",
                AltText = $"{pass.Model.Car.Name}, a {SilhouetteChoice.Of(pass.Model.Car).Word}, from its side, driving to the right over "
                    + $"{PassFigure.Named(pass.Road)}; below it its pitch over time.",
                Caption = $"Movements of road, wheels and body {Numeral.Of(Enlarged, 0)} times as large as they are; time runs at a "
                    + $"quarter of its speed. {SilhouetteChoice.Of(pass.Model.Car).Caption}",
                SignNote = ReaderSigns.Pitch,
                Panels =
                [
                    scene.At(time),
                    pitch with { Limits = [new Limit { At = time, Label = $"{Numeral.Of(time, 2)} s", Direction = LimitDirection.AtX }] },
                ],
            };
        }
    }
}
