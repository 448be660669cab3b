namespace Heaveline.Films;

/// <summary>A number that a film tells.</summary>
/// <param name="Value">SI.</param>
/// <param name="Low">Lower end of its 90 % interval.</param>
/// <param name="High">Upper end.</param>
public readonly record struct FilmNumber(double Value, double Low, double High)
{
    /// <summary>Whether two intervals meet: then the films do not tell which is more.</summary>
    public bool Meets(FilmNumber other) => Low <= other.High && other.Low <= High;

    /// <summary>From draws of a number: the value as it is, the interval by the draws' scatter about their mean.</summary>
    internal static FilmNumber Of(double value, IReadOnlyList<double> draws)
    {
        var finite = draws.Where(double.IsFinite).ToArray();
        if (finite.Length < 2)
        {
            return new FilmNumber(value, double.NaN, double.NaN);
        }

        var mean = finite.Average();
        var half = Numerics.Gaussian.Ninety * Math.Sqrt(finite.Sum(d => (d - mean) * (d - mean)) / (finite.Length - 1));
        return new FilmNumber(value, value - half, value + half);
    }
}
