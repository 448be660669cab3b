namespace Heaveline.Finding;

/// <summary>The folder that an index lies in: made where it can be, and no link is followed there, neither as a folder nor as a file.</summary>
internal static class IndexFolder
{
    // What SQLite writes beside a database.
    private static readonly string[] Beside = ["", "-journal", "-wal", "-shm"];

    /// <summary>Makes the folder; what stands in the way of that, a clause, or blank.</summary>
    /// <param name="file">The database.</param>
    public static string Obstacle(string file)
    {
        var path = Path.GetDirectoryName(file)!;
        var ignore = Path.Combine(path, ".gitignore");
        try
        {
            if (Link([path, .. Beside.Select(end => file + end), ignore]) is { } link)
            {
                return $"'{Name(file, link)}' is a link";
            }

            if (File.Exists(path))
            {
                return $"'{Name(file, path)}' is a file";
            }

            if (Directory.Exists(file))
            {
                return $"'{Name(file, file)}' is a folder";
            }

            Directory.CreateDirectory(path);
            using (new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite))
            {
            }

            // What lies there is nobody's to keep in a history of versions.
            if (!File.Exists(ignore))
            {
                File.WriteAllText(ignore, "*\n");
            }

            return "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return $"'{Name(file, file)}' cannot be written";
        }
    }

    // A link that leads nowhere is one, too.
    private static string? Link(string[] paths) => paths.FirstOrDefault(path => new FileInfo(path).LinkTarget is not null);

    // As it is called inside the garage.
    private static string Name(string file, string path) =>
        Path.GetRelativePath(Path.GetDirectoryName(Path.GetDirectoryName(file)!)!, path).Replace('\\', '/');
}
