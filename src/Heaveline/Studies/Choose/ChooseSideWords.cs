using Heaveline.Answers;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>What the shortlist changes besides, as a table and in words.</summary>
/// <param name="findings">What was found.</param>
internal sealed class ChooseSideWords(ChooseFindings findings)
{
    /// <summary>The change of each setup, least and most in 9 drawn cars of 10; none without draws.</summary>
    public IReadOnlyList<FactTable> Tables
    {
        get
        {
            if (findings.Sides.IsEmpty)
            {
                return [];
            }

            var table = new FactTable(
                $"Change besides, at least and at most in 9 drawn cars of 10, {findings.Full.Model.Load.Name}",
                [ChooseParts.AsItIs, .. findings.List.SelectMany(one => new[] { $"{one.Letter} least", $"{one.Letter} most" })]);
            foreach (var side in findings.Sides)
            {
                var key = $"change-{side.Key}";
                table.Add(key, side.Label, side.Measure.Unit.Symbol, side.Measure.Format,
                [
                    side.Measure.Unit.Of(side.Present),
                    .. side.Changes.SelectMany(change => new double?[] { side.Measure.Unit.Of(change.Low), side.Measure.Unit.Of(change.High) }),
                ]);
            }

            return [table];
        }
    }

    /// <summary>A sentence a setup: what gets better, what worse, what nobody could tell.</summary>
    public IEnumerable<Sentence> Sentences => findings.Sides.IsEmpty ? [] : findings.List.Select((one, k) =>
    {
        var judged = findings.Sides.Where(side => side.Measure.Better != Better.Neither && side.Changes[k].Draws > 1 && !side.IsFurther).ToArray();
        string Said(ChooseSide side, int turn) =>
            string.Join(", ", new[] { turn == 0 ? null : side.Words(k), side.WorseWords(k) }.OfType<string>()) is { Length: > 0 } words
                ? $"{side.Label} ({words})"
                : side.Label;
        string Those(int turn) => string.Join(", ", judged.Where(side => side.Turn(k) == turn).Select(side => Said(side, turn)));
        var parts = new[] { ("better", 1), ("worse", -1), ("the same within the doubt", 0) }
            .Select(turn => (Words: turn.Item1, Those: Those(turn.Item2))).Where(turn => turn.Those.Length > 0);
        return new Sentence(
            $"besides-{one.Letter.ToLowerInvariant()}",
            $"Besides, with {one.Letter}, under the load '{findings.Full.Model.Load.Name}' and in 9 drawn cars of 10{Others(judged)}: "
                + string.Join("; ", parts.Select(part => $"{part.Words}: {part.Those}")) + ".");

        string Others(ChooseSide[] judged) => judged.Any(side => side.WorseWords(k) is not null)
            ? " (where another load of the car has it worse, that stands behind)"
            : "";
    });
}
