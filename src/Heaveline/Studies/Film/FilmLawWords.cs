using Heaveline.Films;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What films say of the law of the dampers, in words.</summary>
internal static class FilmLawWords
{
    private const double Most = 1000.0;

    /// <summary>The sentence.</summary>
    /// <param name="odds">The odds.</param>
    /// <param name="films">How many films.</param>
    public static string Of(LawOdds odds, int films)
    {
        static string Stiffer(double split) => split > 0.0 ? "stiffer in rebound than in bump" : "stiffer in bump than in rebound";
        var ends = odds.Front > 0.0 == odds.Rear > 0.0 ? $"they are {Stiffer(odds.Front)}, {To(odds.Split)}"
            : $"they part in bump and rebound, {To(odds.Split)}, and by the fit the front ones are {Stiffer(odds.Front)}, the rear ones "
                + Stiffer(odds.Rear);
        var part = odds.Split > LawOdds.Tells ? ends
            : odds.Split < -LawOdds.Tells ? $"they are alike in bump and rebound, {To(odds.Split)}"
            : $"whether they part in bump and rebound is not told ({To(odds.Split)} {For(odds.Split)})";
        const string term = "a force that hardly grows with speed (dry friction, or dampers steeper at small speeds: a film does not tell which)";
        var dry = odds.Friction > LawOdds.Tells ? $"beside a straight slope there is {term}, {To(odds.Friction)}"
            : odds.Friction < -LawOdds.Tells ? $"beside a straight slope there is no force that hardly grows with speed, {To(odds.Friction)}"
            : $"whether there is a force that hardly grows with speed is not told ({To(odds.Friction)} {For(odds.Friction)})";
        return $"Of the dampers the {(films == 1 ? "film says" : "films say")}: {part}; {dry}. The car's numbers are of one fit that has both terms.";
    }

    private static string To(double log) => Math.Exp(Math.Abs(log)) is var times && times > Most
        ? $"more than {Numeral.Of(Most, 0)} to 1" : $"{Numeral.Of(times, 0)} to 1";

    private static string For(double log) => log > 0.0 ? "for it" : "against it";
}
