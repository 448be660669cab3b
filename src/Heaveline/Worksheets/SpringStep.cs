using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>A spring pressed from one length to the next.</summary>
/// <param name="From">The longer length, m.</param>
/// <param name="To">The shorter length, m.</param>
/// <param name="Rate">Difference of the forces over that of the lengths, N/m, with the doubt that the readings' own doubts make.</param>
public sealed record SpringStep(double From, double To, Amount<Stiffness> Rate)
{
    /// <summary>The steps between different lengths, forces at one length averaged.</summary>
    internal static IReadOnlyList<SpringStep> Of(IReadOnlyList<(Amount<Length> Length, Amount<Force> Force)> pairs)
    {
        var places = pairs.GroupBy(p => p.Length.Si).OrderByDescending(g => g.Key)
            .Select(g => (Length: g.Key, LengthVariance: MeanVariance(g.Select(p => p.Length.Doubt)), Force: g.Average(p => p.Force.Si),
                ForceVariance: MeanVariance(g.Select(p => p.Force.Doubt))))
            .ToList();
        return [.. places.Zip(places.Skip(1), (a, b) =>
        {
            var by = a.Length - b.Length;
            var rate = (b.Force - a.Force) / by;
            var variance = a.ForceVariance + b.ForceVariance + (rate * rate * (a.LengthVariance + b.LengthVariance));
            return new SpringStep(a.Length, b.Length, new(rate, new Doubt(Math.Sqrt(variance) / by)));
        })];
    }

    // Of half-widths rather than deviations: both scale alike.
    private static double MeanVariance(IEnumerable<Doubt> doubts)
    {
        var squares = doubts.Select(d => d.HalfWidth * d.HalfWidth).ToList();
        return squares.Sum() / squares.Count / squares.Count;
    }
}
