using System.Globalization;
using System.Text;
using Heaveline.Answers;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>The road of a site in words, and as a road file.</summary>
internal static class DriveRoadWords
{
    /// <summary>What is said of it.</summary>
    public static IEnumerable<Sentence> Of(RecoveredRoad? road)
    {
        if (road is null)
        {
            yield break;
        }

        var (high, low) = (road.Height.Max(), road.Height.Min());
        var hump = high > -low ? Text($"{In.Millimetres.Of(high):F0} mm high") : Text($"{In.Millimetres.Of(-low):F0} mm deep");
        yield return new Sentence("road", Text($"The road at {road.Site}, as {Passes(road)} felt it: {hump}, {road.Hump.To:F1} m long, ")
            + Text($"± {In.Millimetres.Of(road.HalfWidth.Max()):F0} mm (90 %). {Band(road)}"));
    }

    /// <summary>A road file and the heights that it names.</summary>
    /// <param name="road">The road.</param>
    /// <param name="name">Its name without ending.</param>
    public static IReadOnlyList<(string Ending, byte[] Bytes)> Files(RecoveredRoad road, string name)
    {
        var first = road.Distance[0];
        var text = new StringBuilder()
            .Append(CultureInfo.InvariantCulture, $"road: {Quoted(road.Site)}\n")
            .Append("note: |\n")
            .Append(CultureInfo.InvariantCulture, $"  Recovered from a drive: {Passes(road)}, the roughness of bump {road.Event} at ")
            .Append(CultureInfo.InvariantCulture, $"{In.KilometresPerHour.Of(road.Speed):F0} km/h.\n")
            .Append(CultureInfo.InvariantCulture, $"  {Band(road)}\n")
            .Append(
                CultureInfo.InvariantCulture,
                $"  Heights are right to ± {In.Millimetres.Of(road.HalfWidth.Max()):F0} mm (90 %), their half-width point by point in the profile.\n")
            .Append(CultureInfo.InvariantCulture, $"profile: {Quoted(name + ".csv")}\n")
            .Append(CultureInfo.InvariantCulture, $"obstacle: {{from: {road.Hump.From - first:F2} m, to: {road.Hump.To - first:F2} m}}\n");
        var heights = new StringBuilder("# Half-width of each height (90 %), mm, in the lines that begin with #.\ndistance [m], height [mm]\n");
        for (var i = 0; i < road.Distance.Length; i++)
        {
            heights.Append(CultureInfo.InvariantCulture, $"# {In.Millimetres.Of(road.HalfWidth[i]):F2}\n")
                .Append(CultureInfo.InvariantCulture, $"{road.Distance[i] - first:F2}, {In.Millimetres.Of(road.Height[i]):F3}\n");
        }

        return [(".yaml", Encoding.UTF8.GetBytes(text.ToString())), (".csv", Encoding.UTF8.GetBytes(heights.ToString()))];
    }

    private static string Passes(RecoveredRoad road) => road.Passes == 1
        ? Text($"one pass at {In.KilometresPerHour.Of(road.Speeds.Slowest):F0} km/h")
        : Text(
            $"{road.Passes} passes at {In.KilometresPerHour.Of(road.Speeds.Slowest):F0} to {In.KilometresPerHour.Of(road.Speeds.Fastest):F0} km/h");

    private static string Band(RecoveredRoad road) => Text($"True for waves of {road.ShortestWave:F1} to {road.LongestWave:F0} m: ")
        + "no grade, no drift, both tracks the same. Its differences are to be trusted before its levels.";

    private static string Quoted(string text) =>
        "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
