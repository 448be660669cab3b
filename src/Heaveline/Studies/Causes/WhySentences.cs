using Heaveline.Causes;

namespace Heaveline.Studies;

/// <summary>Ranked causes in sentences.</summary>
public static class WhySentences
{
    // Below a hundredth a share is not worth a sentence, below two not a test.
    private const double Slight = 0.01;

    /// <summary>The measure, as it is and with every cause neutral.</summary>
    public static string Opening(WhyRanking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        var (name, unit) = (ranking.Measure.Name, ranking.Measure.Unit);
        return FormattableString.Invariant($"{char.ToUpperInvariant(name[0])}{name[1..]}: {unit.Of(ranking.Value):G3}{unit.Suffix}; with every cause neutral {unit.Of(ranking.NeutralValue):G3}{unit.Suffix}.");
    }

    /// <summary>The causes worth a sentence, each with the road test that would prove it where it is worth one.</summary>
    public static IEnumerable<(string Sentence, string? Proof)> Causes(WhyRanking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        return ranking.Causes.Where(c => Math.Abs(c.Relative) >= Slight).Select(c => (c.Sentence, Math.Abs(c.Relative) >= 2.0 * Slight ? c.Proof : null));
    }

    /// <summary>What plays hardly any part; null for nothing.</summary>
    public static string? Rest(WhyRanking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        string[] rest = [.. ranking.Causes.Where(c => Math.Abs(c.Relative) < Slight).Select(c => c.Is)];
        return rest.Length > 0 ? $"Hardly any part of it: {string.Join("; ", rest)}." : null;
    }

    /// <summary>How the shares came about.</summary>
    public static string Method(Why why)
    {
        ArgumentNullException.ThrowIfNull(why);
        return FormattableString.Invariant($"Each cause was taken to its neutral value alone and together with the others ({why.Passes} passes); its share is the mean over the orders of taking them.");
    }
}
