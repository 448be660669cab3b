using Heaveline.Files.Garages;
using Heaveline.Quantities;

namespace Heaveline.Files.Reporting;

/// <summary>The folder <c>reports/</c> of a garage, where its reports are saved.</summary>
/// <param name="garage">The garage's folder.</param>
/// <param name="time">The clock; the system's when left out.</param>
public sealed class ReportFolder(string garage, TimeProvider? time = null)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>Its name inside the garage.</summary>
    public const string Name = "reports";

    private const int LongestName = 80;

    /// <summary>Why a name cannot be taken for a report's file; null when it can.</summary>
    /// <param name="stem">The name without ending.</param>
    public static string? Problem(string stem)
    {
        ArgumentNullException.ThrowIfNull(stem);
        return stem.Length is 0 or > LongestName || !stem.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
            || !char.IsAsciiLetterOrDigit(stem[0])
            ? FormattableString.Invariant(
                $"'{stem}' must be 1 to {LongestName} letters without accents, digits, - and _, with a letter or digit first.")
            : GarageNames.Problem(stem + ".yaml") is { } problem ? $"'{stem}' {problem}." : null;
    }

    /// <summary>Saves a file whole or not at all. A file that is there stays as it is, unless it may be replaced.</summary>
    /// <param name="stem">Its name without ending, as <see cref="Problem"/> accepts it.</param>
    /// <param name="ending">html or pdf.</param>
    /// <param name="bytes">All its bytes.</param>
    /// <param name="replaces">Whether another file of that name may be replaced.</param>
    /// <exception cref="RefusedValueException">The name or the ending is not accepted.</exception>
    /// <exception cref="IOException">
    /// It cannot be written, the folder is a link, or another program is saving in the garage. Nothing is left behind.
    /// </exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public ReportSaveEnd Save(string stem, string ending, byte[] bytes, bool replaces)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        if (Problem(stem) is { } problem || ending is not ("html" or "pdf"))
        {
            throw new RefusedValueException(
                "name of the report", $"'{stem}.{ending}'", "letters, digits, - and _, ending in .html or .pdf", "Give it another name.");
        }

        var folder = Path.Combine(RealPath.Of(garage) ?? garage, Name);
        if (RealPath.Of(folder) != folder)
        {
            throw new IOException($"The folder {Name} of the garage is a link; reports are kept only in a folder of the garage's own.");
        }

        using var only = GarageLock.Take(Path.GetDirectoryName(folder)!, Patience)
            ?? throw new IOException("Another program is saving in this garage. Try again in a moment.");
        Directory.CreateDirectory(folder);
        PartialFile.Sweep(folder, name => Path.GetExtension(name) is ".html" or ".pdf", (time ?? TimeProvider.System).GetUtcNow().UtcDateTime);
        var path = Path.Combine(folder, $"{stem}.{ending}");
        if (WholeFile.Write(path, stream => stream.Write(bytes), () => true, replaces))
        {
            return ReportSaveEnd.Saved;
        }

        return new FileInfo(path).Length == bytes.Length && File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes)
            ? ReportSaveEnd.SameThere
            : ReportSaveEnd.OtherThere;
    }
}
