namespace Heaveline.Films;

/// <summary>
/// How much the films speak for a term of the dampers: the evidence of the laws that have it over that of those that have not, each term by what is
/// thought of it beforehand, residuals that are alike counted as fewer.
/// </summary>
/// <param name="Split">Logarithm of the odds for dampers that part in bump and rebound.</param>
/// <param name="Friction">The same for a force that hardly grows with speed: dry friction, or dampers steeper at small speeds.</param>
/// <param name="Front">By how much of their mean the front dampers of the fit are stiffer in rebound; below 0: in bump.</param>
/// <param name="Rear">The same of the rear ones.</param>
public readonly record struct LawOdds(double Split, double Friction, double Front, double Rear)
{
    /// <summary>From here on films are said to tell: twenty to one.</summary>
    public static readonly double Tells = Math.Log(20.0);

    /// <summary>The odds by the evidence of each law, its logarithm, in the order of <see cref="FilmLaw"/>.</summary>
    internal static LawOdds Of(double[] evidence, double front, double rear)
    {
        static double Both(double a, double b) => Math.Max(a, b) + Math.Log(1.0 + Math.Exp(-Math.Abs(a - b)));
        double Of(FilmLaw law) => evidence[(int)law];
        return new LawOdds(
            Both(Of(FilmLaw.Split), Of(FilmLaw.Whole)) - Both(Of(FilmLaw.Linear), Of(FilmLaw.Friction)),
            Both(Of(FilmLaw.Friction), Of(FilmLaw.Whole)) - Both(Of(FilmLaw.Linear), Of(FilmLaw.Split)),
            front,
            rear);
    }
}
