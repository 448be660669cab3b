using System.Text.RegularExpressions;

namespace Heaveline.Files;

/// <summary>
/// The neighbours into which files are written before they take their names: <c>.NAME.RANDOM.partial</c>. A program that is killed leaves one.
/// </summary>
internal static partial class PartialFile
{
    // One that is being written is younger; a clock that was put back must not keep the others for ever.
    private static readonly TimeSpan Age = TimeSpan.FromMinutes(1);

    private static readonly HashSet<string> Outputs = new(StringComparer.OrdinalIgnoreCase) { ".csv", ".svg", ".png", ".pdf", ".html" };

    /// <summary>A new neighbour's name.</summary>
    public static string NameFor(string path) => $".{Path.GetFileName(path)}.{Path.GetRandomFileName()}.partial";

    /// <summary>Takes away what killed programs left of one kind of file. Who writes such files here must wait meanwhile.</summary>
    /// <param name="folder">The folder; it need not be there.</param>
    /// <param name="isOurs">Whether a file of that name is of the kind.</param>
    /// <param name="now">The time, UTC.</param>
    /// <exception cref="IOException">One cannot be taken away.</exception>
    public static void Sweep(string folder, Func<string, bool> isOurs, DateTime now)
    {
        var place = new DirectoryInfo(folder);
        if (!place.Exists)
        {
            return;
        }

        foreach (var file in place.EnumerateFiles(".*.partial", new EnumerationOptions { AttributesToSkip = FileAttributes.ReparsePoint }))
        {
            if (Form().Match(file.Name) is { Success: true } form && isOurs(form.Groups["name"].Value)
                && (now - file.LastWriteTimeUtc).Duration() > Age && FileNode.Of(file.FullName) == FileNodeKind.File)
            {
                file.Delete();
            }
        }
    }

    /// <summary>
    /// Takes away what killed programs left beside outputs: tables, figures and reports, of which nobody holds a lock. A program that is writing one
    /// holds it open for itself alone, and one that has just written it has done so within the minute.
    /// </summary>
    /// <param name="folder">The folder; it need not be there.</param>
    /// <param name="now">The time, UTC.</param>
    public static void SweepOutputs(string folder, DateTime now) =>
        SweepUnheld(folder, name => Outputs.Contains(Path.GetExtension(name)), now);

    /// <summary>Takes away what killed programs left of one kind of file, as <see cref="SweepOutputs"/> does: others may go on writing.</summary>
    /// <param name="folder">The folder; it need not be there.</param>
    /// <param name="isOurs">Whether a file of that name is of the kind.</param>
    /// <param name="now">The time, UTC.</param>
    public static void SweepUnheld(string folder, Func<string, bool> isOurs, DateTime now)
    {
        var place = new DirectoryInfo(folder);
        if (!place.Exists)
        {
            return;
        }

        foreach (var file in place.EnumerateFiles(".*.partial", new EnumerationOptions { AttributesToSkip = FileAttributes.ReparsePoint }))
        {
            if (Form().Match(file.Name) is { Success: true } form && isOurs(form.Groups["name"].Value)
                && (now - file.LastWriteTimeUtc).Duration() > Age && FileNode.Of(file.FullName) == FileNodeKind.File)
            {
                Drop(file);
            }
        }
    }

    private static void Drop(FileInfo file)
    {
        try
        {
            using var mine = file.Open(FileMode.Open, FileAccess.ReadWrite, FileShare.Delete);
            file.Delete();
        }
        catch (Exception left) when (left is IOException or UnauthorizedAccessException)
        {
            // Somebody is writing it, or it is another's: it stays, and the output beside it is written all the same.
        }
    }

    // Path.GetRandomFileName: eight letters and digits, a point, three.
    [GeneratedRegex(@"^\.(?<name>.+)\.[a-z0-9]{8}\.[a-z0-9]{3}\.partial$", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
