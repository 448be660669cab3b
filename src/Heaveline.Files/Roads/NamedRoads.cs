using System.Reflection;
using System.Text;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>
/// Roads that are always there under a short name, written as road files inside the program, and the choice between them and files.
/// </summary>
public static class NamedRoads
{
    private const string Folder = "roads/";

    private static readonly SortedDictionary<string, Reading<Road>> Readings = Read();

    /// <summary>All of them by their short name ("village-hump"), in alphabetical order.</summary>
    public static IReadOnlyDictionary<string, Road> All { get; } = new SortedDictionary<string, Road>(
        Readings.ToDictionary(r => r.Key, r => r.Value.Value!), StringComparer.Ordinal);

    /// <summary>The road that somebody means: one of the short names, or a file.</summary>
    /// <param name="nameOrPath">A short name, or the path of a road file or a measured profile.</param>
    /// <param name="garage">The folder that a measured profile must lie in; null: the file's own folder.</param>
    /// <param name="stop">Stops the reading of a long profile.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reading<Road> Find(string nameOrPath, string? garage = null, CancellationToken stop = default)
    {
        if (Readings.TryGetValue(nameOrPath, out var reading))
        {
            return reading;
        }

        if (Path.HasExtension(nameOrPath) || nameOrPath.AsSpan().IndexOfAny('/', '\\') >= 0 || File.Exists(nameOrPath))
        {
            return RoadFile.Load(nameOrPath, garage, stop);
        }

        return Reading<Road>.Refused(new SourceText(nameOrPath, nameOrPath), new Refusal(
            nameOrPath,
            1,
            1,
            Math.Max(1, nameOrPath.Length),
            $"\"{nameOrPath}\" is no named road and no file.",
            Advice(nameOrPath, "the path of a road file")));
    }

    /// <summary>What to write in place of a name that is none.</summary>
    /// <param name="name">The name.</param>
    /// <param name="otherwise">What else may be given.</param>
    internal static string Advice(string name, string otherwise)
    {
        var known = $"Named roads: {string.Join(", ", All.Keys)}; or give {otherwise}.";
        return NearestWord.Of(name, All.Keys) is { } near ? $"Did you mean {near}? {known}" : known;
    }

    private static SortedDictionary<string, Reading<Road>> Read()
    {
        var assembly = Assembly.GetExecutingAssembly();
        var roads = new SortedDictionary<string, Reading<Road>>(StringComparer.Ordinal);
        foreach (var resource in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)))
        {
            using var text = new StreamReader(assembly.GetManifestResourceStream(resource)!, Encoding.UTF8);
            var reading = RoadFile.Read(new SourceText(resource, text.ReadToEnd()));
            roads[Path.GetFileNameWithoutExtension(resource)] = reading.Value is null
                ? throw new InvalidOperationException(reading.Format())
                : reading;
        }

        return roads;
    }
}
