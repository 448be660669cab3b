using System.Runtime.InteropServices;
using System.Runtime.Loader;
using Heaveline.Camera.Frames;
using Heaveline.Camera.Stills;
using Heaveline.Camera.Tracks;
using Heaveline.Films;
using Heaveline.Passes;

namespace Heaveline.Camera;

/// <summary>Follows cars and lamps through films: what the program loads from its folder "camera" where that is there.</summary>
public sealed class FilmCamera : IFilmCamera
{
    private const string Native = "OpenCvSharpExtern";

    private static readonly bool IsReady = Ready();

    /// <inheritdoc/>
    public FilmTrack Follow(string film, FilmMarks marks, IProgress<double>? progress = null, CancellationToken stop = default) =>
        Loaded(() => Followed(film, FilmFile.Open(film, stop), marks, 0.0, progress, stop));

    /// <inheritdoc/>
    public LampTrack Brightness(string film, PicturePoint lamp, double time, IProgress<double>? progress = null, CancellationToken stop = default) =>
        Loaded(() => LampFollower.Follow(FilmFile.Open(film, stop), lamp, time, progress, stop));

    /// <inheritdoc/>
    public FilmLook Look(string film) =>
        Loaded(() => FilmFile.Open(film).Known is var known ? new FilmLook(known.Width, known.Height, known.Frames, known.Duration) : null!);

    /// <inheritdoc/>
    public byte[] Frame(string film, double time, CancellationToken stop = default) => Loaded(() =>
    {
        using var frame = FilmFollower.Marked(FilmFile.Open(film), time, null, stop, out _);
        return frame.ImEncode(".png");
    });

    /// <inheritdoc/>
    public (PicturePoint Left, PicturePoint Right)? Hubs(string film, double time, CancellationToken stop = default) => Loaded(() =>
    {
        using var frame = FilmFollower.Marked(FilmFile.Open(film), time, null, stop, out _);
        return HubSearch.Of(frame);
    });

    /// <inheritdoc/>
    public byte[] Still(string film, FilmMarks marks, CancellationToken stop = default) => Loaded(() =>
    {
        var file = FilmFile.Open(film);
        MarkChecks.Of(marks, file.Width, file.Height);
        using var frame = FilmFollower.Marked(file, marks.Time, null, stop, out _);
        using var still = StillPicture.Of(frame, marks);
        return still.ImEncode(".png");
    });

    /// <summary>The track of a film on the disk, with what it is known by and what its camera wrote of its time.</summary>
    internal static FilmTrack Followed(
        string path, FilmFile film, FilmMarks marks, double rowTime, IProgress<double>? progress, CancellationToken stop) =>
        FilmFollower.Follow(film, marks, rowTime, progress, stop) with
        {
            Origin = Files.Films.FilmOrigins.Of(path, marks),
            PlayedSlower = film.Known.PlayedSlower,
        };

    /// <summary>Does something with pictures; where OpenCV cannot be loaded it says what is missing.</summary>
    /// <param name="what">What is done.</param>
    /// <exception cref="RunFailedException">OpenCV could not be loaded.</exception>
    internal static T Loaded<T>(Func<T> what)
    {
        try
        {
            _ = IsReady;
            return what();
        }
        catch (Exception failed) when (Library(failed) is not null)
        {
            throw Missing(Library(failed)!);
        }
    }

    // A type of OpenCV that could not begin for want of its library says so inside; one that failed otherwise is no missing library.
    private static Exception? Library(Exception of) => of switch
    {
        DllNotFoundException or BadImageFormatException or EntryPointNotFoundException => of,
        TypeInitializationException { InnerException: { } inner } => Library(inner),
        _ => null,
    };

    private static RunFailedException Missing(Exception why) => new(
        $"OpenCV, which follows cars, could not be loaded ({why.Message.Split('\n')[0].TrimEnd('.')}).",
        "It is there for Linux on 64-bit processors, and needs what 'apt-get install libgtk-3-0' brings on Debian and Ubuntu.");

    // An assembly that another program loads is not asked where its native part lies.
    private static bool Ready()
    {
        AssemblyLoadContext.Default.ResolvingUnmanagedDll += (_, name) =>
            name == Native && Places().FirstOrDefault(File.Exists) is { } path ? NativeLibrary.Load(path) : IntPtr.Zero;
        return true;
    }

    private static IEnumerable<string> Places()
    {
        var folder = Path.GetDirectoryName(typeof(FilmCamera).Assembly.Location) ?? AppContext.BaseDirectory;
        var file = OperatingSystem.IsWindows() ? Native + ".dll" : OperatingSystem.IsMacOS() ? $"lib{Native}.dylib" : $"lib{Native}.so";
        return [Path.Combine(folder, file), Path.Combine(folder, "runtimes", RuntimeInformation.RuntimeIdentifier, "native", file),
            Path.Combine(folder, "runtimes", "linux-x64", "native", file)];
    }
}
