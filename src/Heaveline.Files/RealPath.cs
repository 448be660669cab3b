namespace Heaveline.Files;

/// <summary>
/// Paths with every link in them followed. A link's own target may go through further links, and its ".." counts from where the link really lies.
/// </summary>
internal static class RealPath
{
    // As many as Linux follows (path_resolution(7)).
    private const int MostLinks = 40;

    /// <summary>Where a path leads; parts that do not exist stay as they are. Null when links lead in a circle.</summary>
    public static string? Of(string path)
    {
        var full = Path.GetFullPath(path);
        var here = Path.GetPathRoot(full)!;
        var waiting = new Stack<string>(Parts(full[here.Length..]));
        var links = 0;
        while (waiting.TryPop(out var part))
        {
            if (part == "..")
            {
                here = Path.GetDirectoryName(here) ?? here;
                continue;
            }

            var next = Path.Combine(here, part);
            if (Target(next) is not { } target)
            {
                here = next;
                continue;
            }

            if (++links > MostLinks)
            {
                return null;
            }

            if (Path.IsPathRooted(target))
            {
                here = Path.GetPathRoot(Path.GetFullPath(target))!;
                target = target[Path.GetPathRoot(target)!.Length..];
            }

            foreach (var inner in Parts(target))
            {
                waiting.Push(inner);
            }
        }

        return here;
    }

    private static string? Target(string path) => new FileInfo(path).LinkTarget ?? new DirectoryInfo(path).LinkTarget;

    // The last part first, for the stack; an empty part or a single point is no step.
    private static IEnumerable<string> Parts(string path) =>
        path.Split([Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries)
            .Where(part => part != ".").Reverse();
}
