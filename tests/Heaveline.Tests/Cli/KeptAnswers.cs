using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

/// <summary>What is kept in the repository of what the program answers, and the way to renew it (docs/answers.md).</summary>
internal static class KeptAnswers
{
    /// <summary>Set to 1, the kept answers and figures are rewritten instead of compared.</summary>
    public static bool Renew => Environment.GetEnvironmentVariable("HEAVELINE_RENEW") == "1";

    /// <summary>Where they lie.</summary>
    public static string Folder => Path.Combine(Checkout.Root, "examples", "answers");

    /// <summary>A road, a speed and a load that suit each example car.</summary>
    public static IReadOnlyDictionary<string, string> Passes { get; } = new Dictionary<string, string>
    {
        ["drover-van"] = "--road examples/roads/school-table.yaml --speed \"30 km/h\" --load laden",
        ["fern-saloon"] = "--road village-hump --speed \"50 km/h\" --load \"four up with luggage\"",
        ["fern-saloon-bought"] = "--road village-hump --speed \"50 km/h\" --load \"four up with luggage\"",
        ["fern-saloon-cured"] = "--road village-hump --speed \"50 km/h\" --load \"four up with luggage\"",
        ["fern-saloon-cured-towing"] = "--road examples/roads/bridge-dip.yaml --speed \"80 km/h\" --load towing",
        ["fern-saloon-cured-unlucky"] = "--road village-hump --speed \"50 km/h\" --load \"four up with luggage\"",
        ["fern-saloon-measured"] = "--road village-hump --speed \"50 km/h\" --load \"four up with luggage\"",
        ["fern-saloon-springs"] = "--road village-hump --speed \"50 km/h\" --load \"four up with luggage\"",
        ["pebble-fluid-car"] = "--road examples/roads/concrete-slabs.yaml --speed \"60 km/h\" --load driver",
        ["plover-motorcycle"] = "--road plank --speed \"50 km/h\" --load rider",
        ["sprig-kit-car"] = "--road examples/roads/cable-cover-right.yaml --speed \"30 km/h\" --load driver",
        ["tarn-off-roader"] = "--road examples/roads/country-lane.yaml --speed \"25 km/h\" --load \"two up with camping gear\"",
        ["thimble-city-car"] = "--road pothole-left --speed \"40 km/h\" --load driver",
    };

    /// <summary>Every example car by the name of its file.</summary>
    public static IEnumerable<string> Cars =>
        Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml")
            .Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal);
}
