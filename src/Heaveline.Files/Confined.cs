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
        if (relative.Length == 0 || relative.Contains('\0', StringComparison.Ordinal) || relative[0] == '/'
            || relative.Contains(':', StringComparison.Ordinal) || Path.IsPathRooted(relative))
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
        if (RealPath.Of(full) is not { } real)
        {
            return ("", "is a link in a circle");
        }

        if (!IsIn(RealPath.Of(root) ?? root, real))
        {
            return ("", "is a link that leads out of the folder");
        }

        return (full, null);
    }

    private static bool IsIn(string root, string path) =>
        path.StartsWith(Path.EndsInDirectorySeparator(root) ? root : root + Path.DirectorySeparatorChar, StringComparison.Ordinal);
}
