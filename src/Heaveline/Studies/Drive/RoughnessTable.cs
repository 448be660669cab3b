using System.Globalization;
using System.Text;
using Heaveline.Answers;
using Heaveline.Drives.Recovery;
using Heaveline.Measures;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>How rough the road of a drive is along the drive, stretches of one class together.</summary>
public static class RoughnessTable
{
    // Rows of a table that is still looked through.
    private const int Most = 24;

    private static readonly Measure<RoughStretch>[] All =
    [
        new(
            "roughness-along", "roughness along the drive, G(0.1)", In.MillionthsOfCubicMetres, 0, s => s.Density,
            "Displacement density at 0.1 cycles per metre of the road between bumps, mean of both tracks, for a road of density G·(n/0.1)⁻²: the one "
            + "that through the linear car of the drive makes vertical acceleration and pitch rate likeliest. A stretch is 100 m.")
        {
            Page = "guide/which-car-moves-like-this.md",
        },
    ];

    /// <summary>All that the table holds, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. All];

    /// <summary>The table; no rows where nothing is told.</summary>
    /// <param name="roughness">The roughness.</param>
    public static FactTable Of(DriveRoughness roughness)
    {
        ArgumentNullException.ThrowIfNull(roughness);
        var table = new FactTable("Roughness along the drive between bumps, G(0.1) (90 %)", ["mean", "from", "to"]);
        var (measure, runs) = (All[0], Runs(roughness));
        foreach (var run in runs.Take(Most))
        {
            table.Add(
                $"{measure.Key}-{run[0].From:F0}", Text($"{run[0].From:F0} m to {run[^1].To:F0} m: {run[0].Class}"), measure.Unit.Symbol,
                measure.Format,
                new[] { Mean(run), run.Min(s => s.Low), run.Max(s => s.High) }.Select(measure.Shown));
        }

        return table;
    }

    /// <summary>What is said of it.</summary>
    /// <param name="roughness">The roughness.</param>
    internal static IEnumerable<Sentence> Said(DriveRoughness roughness)
    {
        const string id = "roughness";
        RoughStretch[] told = [.. roughness.Stretches.Where(s => s.IsTold)];
        if (told.Length == 0)
        {
            yield return new Sentence(id, roughness.WhyNot.Length > 0 ? roughness.WhyNot
                : "The roughness along the road is not told: no stretch of 100 m is known to within a class.");
            yield break;
        }

        var (smooth, rough) = (told.MinBy(s => s.Density)!, told.MaxBy(s => s.Density)!);
        yield return new Sentence(id, Text($"Between bumps the road is {Mixed(told)}: smoothest from {smooth.From:F0} m to {smooth.To:F0} m along ")
            + Text($"the drive, {One(smooth)}, roughest from {rough.From:F0} m to {rough.To:F0} m, {One(rough)} (G(0.1) in 1e-6 m³, 90 %), told by ")
            + Text($"waves of {told.Min(s => s.ShortestWave):F1} m to {told.Max(s => s.LongestWave):F0} m through the linear car of this drive.")
            + (Runs(roughness).Count > Most ? Text($" The table has the first {Most} parts, --json and --write-roughness all stretches.") : ""));
        yield return new Sentence(
            $"{id}-limits",
            "It is the mean of both tracks: one alone is rougher, in short waves up to twice. Where the car moves otherwise than over the bumps it "
            + "is told worse: along a planted lane, by a car with friction and dampers softer with speed, a stretch eight times as rough as the rest "
            + "read six times as rough.");
    }

    /// <summary>All stretches as CSV, the unit in the header.</summary>
    /// <param name="roughness">The roughness.</param>
    internal static byte[] Csv(DriveRoughness roughness)
    {
        var text = new StringBuilder(
            "from [m],to [m],at [s],read [m],speed [km/h],G(0.1) [1e-6 m³],low [1e-6 m³],high [1e-6 m³],class,shortest wave [m],"
            + "longest wave [m],told\n");
        foreach (var s in roughness.Stretches)
        {
            var unit = In.MillionthsOfCubicMetres;
            text.Append(CultureInfo.InvariantCulture, $"{s.From:F0},{s.To:F0},{s.At:F2},{s.Read:F0},{In.KilometresPerHour.Of(s.Speed):F1},")
                .Append(CultureInfo.InvariantCulture, $"{unit.Of(s.Density):G5},{unit.Of(s.Low):G5},{unit.Of(s.High):G5},{s.Class.Letter},")
                .Append(CultureInfo.InvariantCulture, $"{s.ShortestWave:F2},{s.LongestWave:F1},{(s.IsTold ? "yes" : "no")}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    // Neighbours of one class together.
    private static List<List<RoughStretch>> Runs(DriveRoughness roughness)
    {
        var runs = new List<List<RoughStretch>>();
        foreach (var stretch in roughness.Stretches.Where(s => s.IsTold))
        {
            if (runs.Count > 0 && runs[^1][^1].Class == stretch.Class && runs[^1][^1].To >= stretch.From)
            {
                runs[^1].Add(stretch);
            }
            else
            {
                runs.Add([stretch]);
            }
        }

        return runs;
    }

    // Of logarithms, each by how much of it was read.
    private static double Mean(IReadOnlyList<RoughStretch> run) => Math.Exp(run.Sum(s => s.Read * Math.Log(s.Density)) / run.Sum(s => s.Read));

    private static string Mixed(RoughStretch[] told) => "of " + string.Join(", ", told.GroupBy(s => s.Class.Letter).OrderBy(g => g.Key)
        .Select(g => Text($"class {g.Key} over {g.Count()}"))) + Text($" of {told.Length} stretches of 100 m");

    private static string One(RoughStretch s)
    {
        var unit = In.MillionthsOfCubicMetres;
        var reach = s.Smoothest == s.Roughest ? "" : Text($", which may be class {s.Smoothest.Letter} or {s.Roughest.Letter}");
        return Text($"{s.Class} with {unit.Of(s.Density):F0}, {unit.Of(s.Low):F0} to {unit.Of(s.High):F0}{reach}");
    }
}
