using System.Text.Json;
using Heaveline.Answers;
using Heaveline.Causes;

namespace Heaveline.Studies;

/// <summary>Ranked causes of one measure in sentences.</summary>
public sealed record RankingWords
{
    // Below a hundredth a share is not worth a sentence, below two not a test.
    private const double Slight = 0.01;

    /// <summary>Least size of a cause's share over the car's value that is worth a road test (–).</summary>
    internal const double WorthATest = 0.02;

    /// <summary>The measure, as it is and with every cause neutral.</summary>
    public required Sentence Opening { get; init; }

    /// <summary>The causes worth a sentence, greatest first, each with what is said of a road test where it is worth one.</summary>
    public required IReadOnlyList<(Sentence Cause, Sentence? Proof)> Causes { get; init; }

    /// <summary>What plays hardly any part; null for nothing.</summary>
    public required Sentence? Rest { get; init; }

    /// <summary>Causes whose part cannot be told; null for none.</summary>
    public required Sentence? Unknown { get; init; }

    /// <summary>All sentences in their order.</summary>
    public IReadOnlyList<Sentence> All =>
        [.. Causes.SelectMany(c => new[] { c.Cause, c.Proof }).Prepend(Opening).Append(Rest).Append(Unknown).OfType<Sentence>()];

    /// <summary>The sentences of a ranking.</summary>
    /// <param name="id">What the ids begin with ("settling").</param>
    /// <param name="ranking">The ranking.</param>
    /// <param name="tested">Whose road tests stand behind the causes; null for none.</param>
    public static RankingWords Of(string id, WhyRanking ranking, Why? tested)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        string Print(double si) => $"{ranking.Measure.Print(ranking.Measure.Unit.Of(si))}{ranking.Measure.Unit.Suffix}";
        var measure = $"{char.ToUpperInvariant(ranking.Measure.Name[0])}{ranking.Measure.Name[1..]}";
        string[] rest = [.. ranking.Causes.Where(c => !double.IsNaN(c.Share) && Math.Abs(c.Relative) < Slight).Select(c => c.Is)];
        string[] unknown = [.. ranking.Causes.Where(c => double.IsNaN(c.Share)).Select(c => c.Is)];
        var neutral = double.IsFinite(ranking.NeutralValue) ? Print(ranking.NeutralValue) : "nobody can tell";
        return new RankingWords
        {
            Opening = new(id, FormattableString.Invariant(
                $"{measure}: {Print(ranking.Value)}; with every cause neutral {neutral}.")),
            Causes =
            [
                .. ranking.Causes.Where(c => Math.Abs(c.Relative) >= Slight)
                    .Select(c => Words($"{id}-{JsonNamingPolicy.KebabCaseLower.ConvertName($"{c.Kind}")}", c, tested)),
            ],
            Unknown = unknown.Length > 0
                ? new($"{id}-unknown", $"Nobody can tell the part of: {string.Join("; ", unknown)}. No two passes with and without ran to the end.")
                : null,
            Rest = rest.Length > 0 ? new($"{id}-rest", $"Hardly any part of it: {string.Join("; ", rest)}.") : null,
        };
    }

    private static (Sentence Cause, Sentence? Proof) Words(string id, PitchCause cause, Why? tested) =>
        (new Sentence(id, cause.Sentence), tested is not null && Math.Abs(cause.Relative) >= WorthATest
            ? new Sentence($"{id}-proof", TestWords.Of(tested, cause.Kind))
            : null);
}
