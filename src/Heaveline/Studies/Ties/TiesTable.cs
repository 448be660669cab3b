using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Ties;

namespace Heaveline.Studies;

/// <summary>The numbers of cable ties.</summary>
public static class TiesTable
{
    private const string Page = "guide/without-a-phone.md";

    private static readonly Measure<TieMatch> Travel = new(
        "tie-travel",
        "tie",
        In.Millimetres,
        1,
        m => m.Read,
        "Travel of a damper, at its rod, from where the loaded car stood to its farthest in bump.")
    { Page = Page };

    private static readonly Measure<TieMatch> Swings = new(
        "tie-swings", "swings", In.Hertz, 2, m => m.Read, "Whole swings of one end over the time that they took, dampers on.")
    { Page = Page };

    private static readonly Measure<TieMatch> Fall = new(
        "tie-fall",
        "sank by",
        In.Millimetres,
        1,
        m => m.Read,
        "By how much the body sank onto the wheels of an axle under the load.")
    { Page = Page };

    private static readonly Measure<TieEstimate>[] Numbers =
    [
        .. from end in new[] { AxleEnd.Front, AxleEnd.Rear }
           from number in Enum.GetValues<TieNumber>()
           select Of(number, end),
    ];

    /// <summary>All that the tables hold, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [Travel, Swings, Fall, .. Numbers];

    /// <summary>The measure of a number of an axle.</summary>
    public static Measure<TieEstimate> Of(TieEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return Numbers[((int)estimate.End * Enum.GetValues<TieNumber>().Length) + (int)estimate.Number];
    }

    /// <summary>What was read beside what the file's car and the fitted one would show.</summary>
    public static FactTable Readings(TieFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var table = new FactTable("Readings", ["read", "± (90 %)", "by the car file", "by the fit"]);
        for (var n = 0; n < fit.Matches.Length; n++)
        {
            var match = fit.Matches[n];
            var measure = match.Pass is not null ? Travel : match.IsSwings ? Swings : Fall;
            table.Add(
                $"{measure.Key}-{n + 1}",
                match.IsAtLeast ? $"{match.Words}, at least" : match.Words,
                measure.Unit.Symbol,
                measure.Format,
                new[] { match.Read, Gaussian.Ninety * match.Spread, match.ByFile, match.ByFit }.Select(measure.Shown));
        }

        return table;
    }

    /// <summary>The numbers of the car, those that are not said among them.</summary>
    public static FactTable Car(TieFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        string[] before = ["car file", "thought possible from", "to"];
        var table = new FactTable("Car", fit.IsBelieved ? [.. before, "found", "90 % from", "to"] : before);
        foreach (var estimate in fit.Estimates)
        {
            double[] values = [estimate.File, estimate.Before.Low, estimate.Before.High, estimate.Value, estimate.Low, estimate.High];
            table.Add(Of(estimate), values.Take(table.Columns.Count));
        }

        return table;
    }

    /// <summary>How much of each number's doubt the readings took away.</summary>
    public static FactTable Learned(TieFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var table = new FactTable("Learned", ["of its doubt"]);
        foreach (var estimate in fit.Estimates)
        {
            var measure = Of(estimate);
            table.Add($"{measure.Key}-learned", measure.Label, "%", "F0", [In.Percent.Of(estimate.Learned)]);
        }

        return table;
    }

    private static Measure<TieEstimate> Of(TieNumber number, AxleEnd end)
    {
        var axle = end == AxleEnd.Front ? "front" : "rear";
        var (key, label, unit, digits, says) = number switch
        {
            TieNumber.Damping => (
                "damping", "damping", In.PercentOf("the car file"), 0, "Force of the dampers over that of the car file at every velocity."),
            TieNumber.Friction => ("friction", "friction at a wheel", In.Newtons, 0, "Half-width of the friction of one wheel's suspension."),
            TieNumber.BumpStop => (
                "bump-stop", "bump stop touches after", In.Millimetres, 1, "Wheel travel from the state described to the bump stop's contact."),
            _ => ("spring", "spring rate", In.PercentOf("the car file"), 0, "Rate of the springs over that of the car file."),
        };
        return new Measure<TieEstimate>($"{axle}-ties-{key}", $"{axle} {label}", unit, digits, e => e.Value, says) { Page = Page };
    }
}
