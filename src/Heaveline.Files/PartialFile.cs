using System.Text.RegularExpressions;

namespace Heaveline.Files;

/// <summary>
/// The neighbours into which files are written before they take their names: <c>.NAME.RANDOM.partial</c>. A program that is killed leaves one.
/// </summary>
internal static partial class PartialFile
{
    // One that is being written is younger; a clock that was put back must not keep the others for ever.
    private static readonly TimeSpan Age = TimeSpan.FromMinutes(1);

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

    // Path.GetRandomFileName: eight letters and digits, a point, three.
    [GeneratedRegex(@"^\.(?<name>.+)\.[a-z0-9]{8}\.[a-z0-9]{3}\.partial$", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
