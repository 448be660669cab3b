using System.Collections.Immutable;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>What a mean hides: the use case in which a setup hits hardest against the car as it is, and that in which a seat gets most.</summary>
/// <param name="Hit">Largest ratio of the hit, and in which use case; null where no hit counts.</param>
/// <param name="Seat">Largest ratio of the greatest vertical acceleration at the worst seat, and where; null without a seat.</param>
internal sealed record ChooseHarder((double Ratio, string Case)? Hit, (double Ratio, string Case)? Seat)
{
    /// <summary>Largest ratio of what is lost of the least tyre load, and in which use case; null where that is not asked for.</summary>
    public (double Ratio, string Case)? Lost { get; init; }

    // Less is said by the table alone. Judged by eye, no source.
    private const double Said = 1.05;

    /// <summary>What is said of it, a clause; null where nothing is much harder.</summary>
    /// <param name="more">Writes a ratio.</param>
    public string? Words(Func<double, string> more)
    {
        var worst = new[] { (At: Seat, Of: "greatest vertical acceleration of the worst seat"), (At: Hit, Of: "hit") }
            .Where(one => one.At is { Ratio: > Said }).OrderByDescending(one => one.At!.Value.Ratio).FirstOrDefault();
        string[] told =
        [
            .. Lost is { Ratio: > Said } lost ? [$"in '{lost.Case}' the tyre load lost is {more(lost.Ratio)}"] : Array.Empty<string>(),
            .. worst.At is { } at ? [$"in '{at.Case}' the {worst.Of} is {more(at.Ratio)}"] : Array.Empty<string>(),
        ];
        return told.Length == 0 ? null : string.Join(", and ", told);
    }

    /// <summary>Of a setup.</summary>
    /// <param name="row">Its row, as stated.</param>
    /// <param name="found">What was searched.</param>
    /// <param name="seats">Greatest vertical acceleration at its worst seat, crossing by crossing; empty without a seat.</param>
    /// <param name="before">The same of the car as it is.</param>
    /// <param name="use">The use cases.</param>
    public static ChooseHarder Of(
        SetupRow row, FoundSetups found, ImmutableArray<double> seats, ImmutableArray<double> before, ChooseUse use) => new(
        Greatest(found.Scores.Counted.Where(c => c.Kind == WishKind.Hit).Select(c => (UseScores.Ratio(c, row, found.Present), c.Name))),
        Greatest(seats.Zip(before, use.Crossings).Select(one => (one.First / one.Second, one.Third.Name))))
        {
            Lost = Greatest(
            found.Scores.Counted.Where(c => c.Kind == WishKind.LoadLost).Select(c => (UseScores.Ratio(c, row, found.Present), c.Name))),
        };

    private static (double Ratio, string Case)? Greatest(IEnumerable<(double Ratio, string Case)> all) =>
        all.Where(one => double.IsFinite(one.Ratio)).ToArray() is { Length: > 0 } some ? some.MaxBy(one => one.Ratio) : null;
}
