using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// A stretch of a measured road without a point, much longer than the road's usual spacing. Points Δ apart carry no wave shorter than 2Δ [Shannon,
/// Communication in the presence of noise, 1949]: what lies in the stretch is not known, and a line across it would be driven as road.
/// </summary>
/// <param name="From">Distance of the point before it, m, as measured.</param>
/// <param name="To">Distance of the point after it, m.</param>
/// <param name="Usual">The road's usual spacing: the median of all, m.</param>
public sealed record RoadGap(double From, double To, double Usual)
{
    /// <summary>What to do about it.</summary>
    public const string Advice =
        "Measure there too; where the road is known to be straight, add points on it at the usual spacing; or cut the road there.";

    // Times the usual spacing and metres from which a stretch is named, and from which no road is made of it. Common practice, no source: a tyre
    // bridges less than two contact lengths; past a metre a whole plank, and the wave of wheel hop at 30 km/h, may lie unseen.
    private const double NamedTimes = 4.0;
    private const double NamedFrom = 0.25;
    private const double WideTimes = 10.0;
    private const double WideFrom = 1.0;

    /// <summary>Length of the stretch, m.</summary>
    public double Length => To - From;

    /// <summary>The shortest wave that the stretch can carry, m.</summary>
    public double ShortestWave => 2.0 * Length;

    /// <summary>Whether so much is unknown that no road is made of it.</summary>
    public bool IsTooWide => Length > WideFrom && Length > WideTimes * Usual;

    /// <summary>The stretch in words, a sentence without its full stop.</summary>
    public string Words => string.Create(
        CultureInfo.InvariantCulture,
        $"nothing was measured from {From:0.###} to {To:0.###} m, {Length / Usual:0} times the usual spacing of {In.Millimetres.Of(Usual):0.#} mm; "
        + $"waves shorter than {ShortestWave:0.#} m cannot be seen there");

    /// <summary>The gaps among points, in order.</summary>
    /// <param name="distances">Distance of each point, m, growing, shape (n).</param>
    public static IReadOnlyList<RoadGap> Among(IReadOnlyList<double> distances)
    {
        ArgumentNullException.ThrowIfNull(distances);
        if (distances.Count < 3)
        {
            return [];
        }

        var widths = new double[distances.Count - 1];
        for (var i = 0; i < widths.Length; i++)
        {
            widths[i] = distances[i + 1] - distances[i];
        }

        var usual = Numerics.Middle.Of(widths);
        var least = Math.Max(NamedFrom, NamedTimes * usual);
        return
        [
            .. Enumerable.Range(0, widths.Length).Where(i => widths[i] > least)
                .Select(i => new RoadGap(distances[i], distances[i + 1], usual)),
        ];
    }

    internal RefusedValueException Refusal() => new(
        "gap of the measured road",
        string.Create(CultureInfo.InvariantCulture, $"{Length:0.###} m, from {From:0.###} to {To:0.###} m"),
        string.Create(
            CultureInfo.InvariantCulture, $"at most {Math.Max(WideFrom, WideTimes * Usual):0.###} m where points are {Usual:0.###} m apart"),
        Advice);
}
