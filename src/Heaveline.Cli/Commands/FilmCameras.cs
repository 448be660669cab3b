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
        "Following a film needs the camera part, which is a download of its own: put its folder \"camera\" beside the program. A kept "
        + "track (.csv) is read without it.";

    /// <summary>The camera part; null where it is not there.</summary>
    public static IFilmCamera? Find()
    {
        const string name = Assembly + ".dll";
        string[] places = [Path.Combine(AppContext.BaseDirectory, Folder, name), Path.Combine(AppContext.BaseDirectory, name)];
        return places.FirstOrDefault(File.Exists) is { } path
            && System.Reflection.Assembly.LoadFrom(path).GetType(Type) is { } type
                ? (IFilmCamera?)Activator.CreateInstance(type)
                : null;
    }
}
