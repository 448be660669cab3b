namespace Heaveline.Files.Reporting;

/// <summary>Files under the deepest folder that holds them all, each named from there, so that two of one name are still told apart.</summary>
internal sealed class SharedFolder(IEnumerable<string> paths)
{
    private readonly string folder = paths.Select(path => Path.GetDirectoryName(Path.GetFullPath(path))!).Aggregate(Common);

    /// <summary>A file's name from the folder, with / between folders; its own name where no folder holds all, as on two drives.</summary>
    public string NameOf(string path) => folder.Length == 0
        ? Path.GetFileName(path)
        : Path.GetRelativePath(folder, Path.GetFullPath(path)).Replace('\\', '/');

    private static string Common(string one, string other)
    {
        while (!(other + Path.DirectorySeparatorChar).StartsWith(
            Path.TrimEndingDirectorySeparator(one) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            one = Path.GetDirectoryName(one) ?? "";
            if (one.Length == 0)
            {
                return one;
            }
        }

        return one;
    }
}
