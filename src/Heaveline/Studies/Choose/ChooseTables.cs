using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Search;

namespace Heaveline.Studies;

/// <summary>The shortlist as tables, a column a setup.</summary>
internal static class ChooseTables
{
    private const string Whole = "F0";
    private const string Tenths = "F1";

    /// <summary>What each setup costs and comes to, in per cent of the car as it is; none without a shortlist.</summary>
    public static IReadOnlyList<FactTable> Shortlist(ChooseFindings findings)
    {
        if (findings.List.IsEmpty)
        {
            return [];
        }

        var table = new FactTable("Shortlist, in per cent of the car as it is", [.. findings.List.Select(one => one.Letter)]);
        void Add(string key, string label, string unit, string format, Func<ChooseTold, double?> of) =>
            table.Add(key, label, unit, format, findings.List.Select(of));
        if (findings.Parts.HasPrices)
        {
            Add("price", "price", findings.Parts.Currency, "0.##", one => findings.Parts.Space.Price(one.Entry.Setup));
        }

        Add("parts-changed", "places changed", "–", Whole, one => findings.Parts.Space.Changed(one.Entry.Setup));
        foreach (var (k, wish) in findings.Found.Wishes.Index().Where(w => w.Item is not (WishKind.Money or WishKind.Parts)))
        {
            var (key, name) = (Key(wish), Name(wish));
            Add(key, $"{name}, as stated", "%", Tenths, one => Share(one.Entry.Tried.Stated.Wishes[k]));
            if (findings.Trial.Draws > 0)
            {
                Add($"{key}-mean", $"{name}, mean of the drawn cars", "%", Tenths, one => Share(one.Entry.Tried.Mean(k)));
                Add($"{key}-spread", $"{name}, standard deviation", "%", Tenths, one => Share(one.Entry.Tried.Deviation(k)));
                Add($"{key}-ninth", $"{name}, at most in 9 drawn cars of 10", "%", Tenths, one => Share(one.Entry.Tried.Ninth(k)));
            }
        }

        Add("worst-road", "worst use case, as stated", "%", Tenths, one =>
            In.Percent.Of(findings.Found.Scores.Of(WishKind.WorstRoad, one.Entry.Tried.Stated.Row, findings.Found.Present)));
        Add("worst-hit", "worst hit, of the use cases, as stated", "%", Tenths, one =>
            one.Harder.Hit is { Ratio: var ratio } ? In.Percent.Of(ratio) : null);
        if (findings.Asked.Car.Seats.Count > 0)
        {
            Add("worst-seat", "greatest vertical acceleration of the worst seat, worst of the use cases, as stated", "%", Tenths, one =>
                one.Harder.Seat is { Ratio: var ratio } ? In.Percent.Of(ratio) : null);
        }

        return [table];
    }

    /// <summary>The settling of every use case, in per cent of the car as it is.</summary>
    public static IReadOnlyList<FactTable> Cases(ChooseFindings findings)
    {
        if (findings.List.IsEmpty)
        {
            return [];
        }

        var table = new FactTable("Settling of each use case, in per cent of the car as it is", [.. findings.List.Select(one => one.Letter)]);
        foreach (var (k, column) in findings.Found.Scores.Counted.Where(c => c.Kind == WishKind.Settling).Index())
        {
            table.Add(FormattableString.Invariant($"case-{k + 1}"), column.Name, "%", Tenths, findings.List.Select(one =>
                (double?)In.Percent.Of(UseScores.Ratio(column, one.Entry.Tried.Stated.Row, findings.Found.Present))));
        }

        return [table];
    }

    /// <summary>The best setup with one place one part softer or firmer, or as it is.</summary>
    public static IReadOnlyList<FactTable> Aside(ChooseFindings findings)
    {
        if (findings.Aside.IsEmpty)
        {
            return [];
        }

        var wishes = findings.Found.Wishes.Index().Where(w => w.Item is not (WishKind.Money or WishKind.Parts)).ToArray();
        var table = new FactTable("A with one place changed, in per cent of the car as it is", [.. wishes.Select(w => Name(w.Item))]);
        foreach (var (k, (place, setup)) in findings.Aside.Index())
        {
            var words = $"{findings.Parts.Space.Places[place].Name} {findings.Parts.At(setup.Setup, place)}"
                + (setup.IsAllowed ? "" : $" (no choice: {ChooseLimitWords.Reason(setup.Refusal, findings.Found.Task, findings.Asked.Limits)})");
            table.Add(
                FormattableString.Invariant($"aside-{k + 1}"), words, "%", Tenths, wishes.Select(w => Share(setup.Wishes[w.Index])));
        }

        return [table];
    }

    /// <summary>The side effects standing under the fullest load.</summary>
    public static IReadOnlyList<FactTable> Standing(ChooseFindings findings) => findings.List.IsEmpty
        ? []
        : [CostTable.Of([ChooseParts.AsItIs, .. findings.List.Select(one => one.Letter)], [findings.Full, .. findings.List.Select(one => one.Full)])];

    /// <summary>What a wish is called.</summary>
    public static string Name(WishKind wish) => wish switch
    {
        WishKind.Settling => "settling",
        WishKind.Hit => "hit",
        WishKind.Ride => "ride",
        WishKind.Grip => "change of tyre load",
        WishKind.LoadLost => "tyre load lost",
        WishKind.WorstRoad => "worst use case",
        WishKind.Money => "price",
        _ => "places changed",
    };

    // None where a setup has no such number, or not in nine cars of ten.
    private static double? Share(double ratio) => double.IsFinite(ratio) ? In.Percent.Of(ratio) : null;

    private static string Key(WishKind wish) => Name(wish).Replace(' ', '-');
}
