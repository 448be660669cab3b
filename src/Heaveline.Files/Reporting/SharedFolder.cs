using Heaveline.Reports;

namespace Heaveline.Files.Reporting;

/// <summary>
/// Files under the deepest folder that holds them all, each named from there: what a report prints of its inputs must neither depend on where they lay nor
/// give away where that was, and must still tell two files of one name apart.
/// </summary>
internal sealed class SharedFolder
{
    private readonly List<(string Path, SourceText Source)> files = [];
    private readonly string folder;

    public SharedFolder(IReadOnlyList<SourceText> sources)
    {
        foreach (var source in sources)
        {
            var path = Path.GetFullPath(source.File);
            if (files.All(f => f.Path != path))
            {
                files.Add((path, source));
            }
        }

        folder = files.Select(f => Path.GetDirectoryName(f.Path)!).Aggregate(Common);
    }

    /// <summary>The files, each once.</summary>
    public IEnumerable<ReportInput> Inputs => files.Select(f => new ReportInput { Name = NameOf(f.Path), Text = f.Source.Text, Sha256 = f.Source.Sha256 });

    /// <summary>A file's name from the folder, with / between folders; its own name where no folder holds all, as on two drives.</summary>
    public string NameOf(string path) => folder.Length == 0
        ? Path.GetFileName(path)
        : Path.GetRelativePath(folder, Path.GetFullPath(path)).Replace('\\', '/');

    private static string Common(string one, string other)
    {
        while (!(other + Path.DirectorySeparatorChar).StartsWith(Path.TrimEndingDirectorySeparator(one) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
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
