using Heaveline.Files.Cars;
using Heaveline.Files.Garages;
using Heaveline.Files.Roads;

namespace Heaveline.Web.Serving;

/// <summary>What stands in the garage, by name. Files are read anew whenever they are asked for.</summary>
internal sealed class Shelf(ServeOptions options)
{
    /// <summary>The folder, read and written by confined names.</summary>
    public Garage Garage { get; } = new(options.Garage, options.Clock);

    /// <summary>The folder.</summary>
    public string Folder => options.Garage;

    /// <summary>Where the file of a car stands, or would stand.</summary>
    /// <param name="name">Name without ending; letters, digits and dashes.</param>
    public string PathOf(string name) => Path.Combine(options.Garage, name + ".yaml");

    /// <summary>Names of the car files and variants, without their ending, in alphabetical order.</summary>
    public IReadOnlyList<string> CarNames =>
        [.. Directory.EnumerateFiles(options.Garage, "*.yaml").Where(path => !IsRoad(path)).Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    /// <summary>Names of the roads that come with Heaveline.</summary>
    public static IReadOnlyList<string> RoadNames => [.. NamedRoads.All.Keys];

    /// <summary>A car by its name, or null when there is none of that name.</summary>
    public CarReading? Car(string name) => CarNames.Contains(name) ? CarFile.Load(PathOf(name), options.Garage) : null;

    /// <summary>Names of the road files of the garage, with their ending, in alphabetical order. A road is told by its first key.</summary>
    public IReadOnlyList<string> GarageRoads =>
        [.. Directory.EnumerateFiles(options.Garage, "*.yaml").Where(IsRoad).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    /// <summary>A road by its name, one that comes with Heaveline or one of the garage; null when there is none of that name.</summary>
    public RoadReading? Road(string name) => NamedRoads.All.TryGetValue(name, out var road) ? new RoadReading(road, [])
        : GarageRoads.Contains(name) ? RoadFile.Load(Path.Combine(options.Garage, name), options.Garage)
        : null;

    private static bool IsRoad(string path) => File.ReadLines(path).Take(40).Any(line => line.StartsWith("road:", StringComparison.Ordinal));
}
