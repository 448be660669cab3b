using System.Diagnostics;

namespace Heaveline.Camera.Frames;

/// <summary>
/// The two programs that read films, found on the path. They are started as processes of their own: what they are asked is one line each, every
/// film of every phone is read by them, a film that brings one down does not bring us down, and their licence stays theirs. A wrapper would add a
/// package and hide that line.
/// </summary>
internal static class FilmPrograms
{
    // No play list, no address of the net, no picture: what a film may be, and nothing that names other files.
    private static readonly string[] Confined =
        ["-protocol_whitelist", "file,pipe", "-format_whitelist", "mov,matroska,avi,mpegts,mpeg,asf,flv,ogg,mjpeg,h264,hevc,aac,mp3,wav,flac"];

    /// <summary>A process that asks what a film is.</summary>
    public static Process Probe(string film, params string[] asked) => Started("ffprobe", ["-v", "error", .. Confined, .. asked, Named(film)]);

    /// <summary>A process that turns a film into something else on its output.</summary>
    public static Process Decode(string film, params string[] into) =>
        Started("ffmpeg", ["-nostdin", "-hide_banner", "-loglevel", "info", "-nostats", .. Confined, "-i", Named(film), .. into]);

    /// <summary>A process that takes frames on its input and writes a film.</summary>
    public static Process Encode(params string[] words) => Started("ffmpeg", ["-y", "-hide_banner", "-loglevel", "error", .. words],
        takesInput: true);

    private static string Named(string film) => "file:" + Path.GetFullPath(film);

    private static Process Started(string program, IEnumerable<string> words, bool takesInput = false)
    {
        var path = Found(program) ?? throw new FilmRefusedException(
            $"The program {program}, which reads films, was not found on the path.",
            "Install FFmpeg: 'apt-get install ffmpeg' on Debian and Ubuntu, 'brew install ffmpeg' on macOS, 'winget install ffmpeg' on Windows.");
        return Process.Start(new ProcessStartInfo(path, words)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = takesInput,
            UseShellExecute = false,
            CreateNoWindow = true,
        })!;
    }

    // By hand: Windows looks into the folder that one is in first, where a film may lie beside a program of that name.
    private static string? Found(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .Where(Path.IsPathRooted)
            .Select(folder => Path.Combine(folder, OperatingSystem.IsWindows() ? program + ".exe" : program))
            .FirstOrDefault(File.Exists);
}
