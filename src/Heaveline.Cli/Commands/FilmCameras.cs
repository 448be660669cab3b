using Heaveline.Films;

namespace Heaveline.Cli.Commands;

/// <summary>
/// What follows cars through the pictures of films: an assembly that is downloaded by itself and lies in a folder beside the program.
/// </summary>
internal static class FilmCameras
{
    private const string Folder = "camera";
    private const string Assembly = "Heaveline.Camera";
    private const string Type = "Heaveline.Camera.FilmCamera";

    /// <summary>What to do where there is none.</summary>
    public const string Missing =
        "Following a film needs the camera part, which is a download of its own: put its folder \"camera\" beside the program (in a checkout: dotnet "
        + "build src/Heaveline.Camera -c Release). It is there for Linux on 64-bit processors. A kept track (.csv) is read without it.";

    /// <summary>The camera part; null where it is not there.</summary>
    /// <param name="streams">Where words go: the program in front turns into the one that can load it.</param>
    public static IFilmCamera? Find(Output.Streams streams) =>
        Places().FirstOrDefault(File.Exists) is { } path && System.Reflection.Assembly.LoadFrom(path).GetType(Type) is { } type
            ? (IFilmCamera?)Activator.CreateInstance(type)
            : null;

    // Beside a published program; in a checkout, where it was built.
    private static IEnumerable<string> Places()
    {
        yield return Path.Combine(AppContext.BaseDirectory, Folder, Assembly + ".dll");
        yield return Path.Combine(AppContext.BaseDirectory, Assembly + ".dll");
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            yield return Path.Combine(folder.FullName, "src", Assembly, "bin", "Release", "net10.0", Assembly + ".dll");
        }
    }
}
