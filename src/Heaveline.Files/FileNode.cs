using System.Runtime.InteropServices;
using System.Text;

namespace Heaveline.Files;

/// <summary>
/// What a path leads to, links followed, seen without opening it: opening a pipe waits for its other end, and a device may never end. The runtime
/// tells files from folders only, so the system is asked.
/// </summary>
internal static class FileNode
{
    private const int FromHere = -100;
    private const uint TypeAndMode = 0x1;
    private const int TypeBits = 0xF000;
    private const int Folder = 0x4000;
    private const int Pipe = 0x1000;
    private const int CharacterDevice = 0x2000;
    private const int BlockDevice = 0x6000;
    private const int Socket = 0xC000;
    private const int RegularFile = 0x8000;
    private const int Unseen = 0;

    // Where Linux shows what it knows as files: reading one may never end (proc(5), sysfs(5)).
    private static readonly string[] MadeUp = ["/proc/", "/sys/"];

    /// <summary>What is there.</summary>
    public static FileNodeKind Of(string path)
    {
        if (string.IsNullOrEmpty(path) || path.Contains('\0', StringComparison.Ordinal))
        {
            return FileNodeKind.Nothing;
        }

        var type = OperatingSystem.IsWindows() ? (int?)null : TypeOf(path) & TypeBits;
        return type switch
        {
            Pipe or CharacterDevice or BlockDevice or Socket => FileNodeKind.Special,
            Folder => FileNodeKind.Folder,
            RegularFile => IsMadeUp(path) ? FileNodeKind.MadeUp : FileNodeKind.File,
            Unseen => FileNodeKind.Nothing,
            _ when OperatingSystem.IsWindows() && Path.GetFullPath(path).StartsWith(@"\\.\", StringComparison.Ordinal) => FileNodeKind.Special,
            _ => File.Exists(path) ? FileNodeKind.File : Directory.Exists(path) ? FileNodeKind.Folder : FileNodeKind.Nothing,
        };
    }

    /// <summary>Whether a path leads to a named pipe, links followed.</summary>
    public static bool IsPipe(string path) => !OperatingSystem.IsWindows() && Of(path) == FileNodeKind.Special && (TypeOf(path) & TypeBits) == Pipe;

    /// <summary>What a path leads to in words, where it is no file on a disk; null where it is, or where nothing is there.</summary>
    public static string? Other(string path) => Of(path) switch
    {
        FileNodeKind.Special => "no regular file but a pipe, a socket or a device",
        FileNodeKind.MadeUp => "no file on a disk but one that the system makes up while it is read",
        _ => null,
    };

    /// <summary>Says so where a path leads to a pipe, a socket, a device or what the system makes up.</summary>
    /// <exception cref="IOException">It does.</exception>
    public static void RefuseSpecial(string path)
    {
        if (Other(path) is { } other)
        {
            throw new IOException($"'{path}' is {other}.");
        }
    }

    private static bool IsMadeUp(string path) =>
        OperatingSystem.IsLinux() && RealPath.Of(path) is { } real && MadeUp.Any(root => real.StartsWith(root, StringComparison.Ordinal));

    // st_mode; 0 where nothing can be seen, null where the system is not asked. Places in the records: statx(2) of Linux, the same on every
    // processor; stat(2) of macOS.
    private static int? TypeOf(string path)
    {
        var name = Encoding.UTF8.GetBytes(path + '\0');
        var found = new byte[512];
        try
        {
            if (OperatingSystem.IsLinux())
            {
                return Linux(FromHere, name, 0, TypeAndMode, found) == 0 ? BitConverter.ToUInt16(found, 28) : Unseen;
            }

            if (OperatingSystem.IsMacOS())
            {
                var arm = RuntimeInformation.ProcessArchitecture == Architecture.Arm64;
                return (arm ? Mac(name, found) : MacX64(name, found)) == 0 ? BitConverter.ToUInt16(found, 4) : Unseen;
            }

            return null;
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }
    }

    [DllImport("libc", EntryPoint = "statx"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Linux(int folder, byte[] path, int flags, uint mask, byte[] found);

    [DllImport("libc", EntryPoint = "stat"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Mac(byte[] path, byte[] found);

    [DllImport("libc", EntryPoint = "stat$INODE64"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int MacX64(byte[] path, byte[] found);
}
