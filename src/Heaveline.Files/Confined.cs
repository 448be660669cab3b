namespace Heaveline.Files;

/// <summary>File names that files give: relative to the file that names them, and never out of a folder.</summary>
internal static class Confined
{
    /// <summary>The full path of a named file, or why it is not taken.</summary>
    /// <param name="folder">The folder that it must stay in, subfolders included.</param>
    /// <param name="from">The file that names it.</param>
    /// <param name="name">The name as written, with / or \ between folders.</param>
    public static (string Path, string? Problem) Resolve(string folder, string from, string name)
    {
        var relative = name.Replace('\\', '/');
        if (relative.Length == 0 || relative.Contains('\0', StringComparison.Ordinal) || relative[0] == '/' || relative.Contains(':', StringComparison.Ordinal) || Path.IsPathRooted(relative))
        {
            return ("", "is not a name relative to this file");
        }

        var root = Path.GetFullPath(folder);
        var full = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Path.GetFullPath(from))!, relative));
        if (!IsIn(root, full))
        {
            return ("", "leads out of the folder");
        }

        // A link inside the folder may point anywhere.
        for (var part = full; part.Length > root.Length; part = Path.GetDirectoryName(part)!)
        {
            FileSystemInfo item = Directory.Exists(part) ? new DirectoryInfo(part) : new FileInfo(part);
            if (item.Exists && item.LinkTarget is not null && item.ResolveLinkTarget(returnFinalTarget: true) is { } target && !IsIn(root, target.FullName))
            {
                return ("", "is a link that leads out of the folder");
            }
        }

        return (full, null);
    }

    private static bool IsIn(string root, string path) =>
        path.StartsWith(Path.EndsInDirectorySeparator(root) ? root : root + Path.DirectorySeparatorChar, StringComparison.Ordinal);
}
