using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>
/// What an interconnection gives and what it costs, drawn: the numbers of its table with it beside those of separate springs as stiff in heave, or of
/// the car without it where no springs could stand in.
/// </summary>
internal static class LinkFigure
{
    public const string Id = "link";

    public static Figure Of(string car, string load, InterconnectionBench bench)
    {
        var table = LinkTable.States(bench);
        var other = bench.Separate is null ? 0 : table.Columns.Count - 1;
        var values = from row in table.Rows
                     // A state's own frequency is no number of the car.
                     where row.Key != "at-frequency"
                     where row.Values[other] is { } before && double.IsFinite(before) && row.Values[1] is { } after && double.IsFinite(after)
                     select new PairedValue(
                         row.Label,
                         row.Unit,
                         new CategoryValue { Value = row.Values[other]!.Value },
                         new CategoryValue { Value = row.Values[1]!.Value },
                         // More stiffness is no price, and no gain by itself; more pitch in braking is one.
                         row.Key == "braking-pitch" ? true : null);
        return PairedFigure.Of(
            $"{car}: what its interconnection does", $"Under the load {load}.", table.Columns[other], table.Columns[1], [.. values]);
    }

    /// <summary>The two passes of a crossing over time; that with the link alone where nothing could stand in for it.</summary>
    public static Figure Of(LinkCrossing crossing) => crossing.Separate is { } separate
        ? CompareFigure.Of(
            [("separate springs", separate, PassMeasures.Of(separate)), ("with the link", crossing.With, PassMeasures.Of(crossing.With))])
        : PassFigure.Of(crossing.With, PassMeasures.Of(crossing.With));
}
