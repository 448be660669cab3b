using Heaveline.Files.Cars;
using Heaveline.Files.Roads;

namespace Heaveline.Web.Serving;

/// <summary>What stands in the garage, by name. Files are read anew whenever they are asked for.</summary>
internal sealed class Shelf(ServeOptions options)
{
    /// <summary>Names of the car files and variants, without their ending, in alphabetical order.</summary>
    public IReadOnlyList<string> CarNames =>
        [.. Directory.EnumerateFiles(options.Garage, "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    /// <summary>Names of the roads that come with Heaveline.</summary>
    public static IReadOnlyList<string> RoadNames => [.. NamedRoads.All.Keys];

    /// <summary>A car by its name, or null when there is none of that name.</summary>
    public CarReading? Car(string name) => CarNames.Contains(name) ? CarFile.Load(Path.Combine(options.Garage, name + ".yaml"), options.Garage) : null;
}
