using System.Reflection;
using Heaveline.Cli.Output;
using Heaveline.Files;
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

    private const string Solution = "Heaveline.slnx";

    /// <summary>The camera part; null where it is not there.</summary>
    /// <param name="streams">Where words go: the program in front turns into the one that can load it.</param>
    /// <exception cref="Stopped">What lies there is not the camera part of this program.</exception>
    public static IFilmCamera? Find(Streams streams) => Places(AppContext.BaseDirectory).FirstOrDefault(File.Exists) is { } path
        ? Loaded(path)
        : null;

    /// <summary>Where it may lie: beside a published program; in a checkout, from which the program itself was built, where it was built.</summary>
    /// <remarks>No folder above a program that was unpacked somewhere is believed: others may write there.</remarks>
    /// <param name="program">The folder of the program.</param>
    internal static IEnumerable<string> Places(string program)
    {
        yield return Path.Combine(program, Folder, Assembly + ".dll");
        yield return Path.Combine(program, Assembly + ".dll");
        // ROOT/src/Heaveline.Cli/bin/Release/net10.0
        var output = new DirectoryInfo(Path.TrimEndingDirectorySeparator(program));
        if (output.Parent is { Parent: { Name: "bin", Parent.Parent: { Name: "src" or "tests" or "bench", Parent: { } root } } } configuration
            && File.Exists(Path.Combine(root.FullName, Solution)))
        {
            yield return Path.Combine(root.FullName, "src", Assembly, "bin", configuration.Name, output.Name, Assembly + ".dll");
        }
    }

    /// <summary>The camera part of a file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="Stopped">It is not that of this program.</exception>
    internal static IFilmCamera? Loaded(string path)
    {
        try
        {
            var (own, its) = (typeof(FilmCameras).Assembly.GetName().Version, AssemblyName.GetAssemblyName(path).Version);
            if (own != its)
            {
                throw Other(path, $"of version {its}, and the program is of version {own}");
            }

            return System.Reflection.Assembly.LoadFrom(path).GetType(Type) is { } type
                ? (IFilmCamera?)Activator.CreateInstance(type)
                : throw Other(path, "without what follows a film");
        }
        catch (Exception failure) when (failure is BadImageFormatException or FileLoadException)
        {
            throw Other(path, $"which cannot be loaded: {FileTrouble.Words(failure)}");
        }
    }

    private static Stopped Other(string path, string how) => new(
        $"heaveline: '{path}' is a file {how.TrimEnd('.')}. Take program and camera part out of one release.",
        ExitCode.NotComputed);
}
