using System.Text.Json;
using Heaveline.Answers;
using Heaveline.Causes;

namespace Heaveline.Studies;

/// <summary>Ranked causes of one measure in sentences.</summary>
public sealed record RankingWords
{
    // Below a hundredth a share is not worth a sentence, below two not a test.
    private const double Slight = 0.01;

    /// <summary>The measure, as it is and with every cause neutral.</summary>
    public required Sentence Opening { get; init; }

    /// <summary>The causes worth a sentence, greatest first, each with the road test that would prove it where it is worth one.</summary>
    public required IReadOnlyList<(Sentence Cause, Sentence? Proof)> Causes { get; init; }

    /// <summary>What plays hardly any part; null for nothing.</summary>
    public required Sentence? Rest { get; init; }

    /// <summary>All sentences in their order.</summary>
    public IReadOnlyList<Sentence> All => [.. Causes.SelectMany(c => new[] { c.Cause, c.Proof }).Prepend(Opening).Append(Rest).OfType<Sentence>()];

    /// <summary>The sentences of a ranking.</summary>
    /// <param name="id">What the ids begin with ("settling").</param>
    /// <param name="ranking">The ranking.</param>
    /// <param name="withTests">Whether road tests stand behind the causes.</param>
    public static RankingWords Of(string id, WhyRanking ranking, bool withTests)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        var unit = ranking.Measure.Unit;
        var measure = $"{char.ToUpperInvariant(ranking.Measure.Name[0])}{ranking.Measure.Name[1..]}";
        string[] rest = [.. ranking.Causes.Where(c => Math.Abs(c.Relative) < Slight).Select(c => c.Is)];
        return new RankingWords
        {
            Opening = new(id, FormattableString.Invariant(
                $"{measure}: {unit.Of(ranking.Value):G3}{unit.Suffix}; with every cause neutral {unit.Of(ranking.NeutralValue):G3}{unit.Suffix}.")),
            Causes =
            [
                .. ranking.Causes.Where(c => Math.Abs(c.Relative) >= Slight)
                    .Select(c => Words($"{id}-{JsonNamingPolicy.KebabCaseLower.ConvertName($"{c.Kind}")}", c, withTests)),
            ],
            Rest = rest.Length > 0 ? new($"{id}-rest", $"Hardly any part of it: {string.Join("; ", rest)}.") : null,
        };
    }

    private static (Sentence Cause, Sentence? Proof) Words(string id, PitchCause cause, bool withTest) =>
        (new Sentence(id, cause.Sentence), withTest && Math.Abs(cause.Relative) >= 2.0 * Slight ? new Sentence($"{id}-proof", cause.Proof) : null);
}
