using Heaveline.Cars;
using Heaveline.Cli.Output;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>Finds cars and roads by the paths of their files; what their readers have to say goes beside the results.</summary>
internal sealed class FileFinder(Streams streams) : IFinder
{
    private readonly HashSet<string> read = [];
    private readonly List<string> names = [];

    /// <summary>The names that the owners of the cars and roads found so far gave.</summary>
    public IReadOnlyList<string> Names => names;

    /// <summary>Whether a file is one of those that were read: it must not be written over.</summary>
    public bool HasRead(string path) => read.Contains(RealPath(path));

    public Found<Car> Car(string name)
    {
        var reading = CarFile.Load(name);
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => RealPath(s.File)));
        names.AddRange(reading.Value is { } car ? LoadedCar.NamesIn(car) : []);
        return new Found<Car>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"{name} is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput())],
        };
    }

    public Found<Road> Road(string name)
    {
        var reading = NamedRoads.Find(name);
        Say(reading.Format());
        read.UnionWith(reading.Sources.Select(s => RealPath(s.File)));
        names.AddRange(reading.Value is { } road ? [road.Name] : Array.Empty<string>());
        return new Found<Road>
        {
            Name = name,
            ShortName = Path.GetFileNameWithoutExtension(name),
            Value = reading.Value,
            Refusal = reading.Value is null ? $"the road '{name}' is refused for {Reasons(reading.Refusals.Count)}." : "",
            Inputs = [.. reading.Sources.Select(s => s.ToInput(NamedRoads.All.ContainsKey(name)))],
        };
    }

    public IReadOnlyList<(string Name, string Caption)> Roads => [.. NamedRoads.All.Select(r => (r.Key, r.Value.Caption))];

    private static string RealPath(string path)
    {
        if (string.IsNullOrWhiteSpace(path))
        {
            return "";
        }

        var full = Path.GetFullPath(path);
        return File.Exists(full) ? File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full : full;
    }

    private void Say(string remarks)
    {
        if (remarks.Length > 0)
        {
            streams.Remarks.WriteLine(remarks);
        }
    }

    private static string Reasons(int count) => count == 1 ? "1 reason" : FormattableString.Invariant($"{count} reasons");
}
