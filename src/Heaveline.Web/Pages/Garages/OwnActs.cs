namespace Heaveline.Web.Pages.Garages;

/// <summary>How the acts of a page left their files: as long as these lie there so, the disk has nothing new to say of them.</summary>
/// <param name="folder">The garage's folder.</param>
internal sealed class OwnActs(string folder)
{
    private readonly Dictionary<string, (long Length, DateTime Written)?> left = new(StringComparer.Ordinal);

    /// <summary>Remembers how files lie there after an act.</summary>
    /// <param name="files">Their names inside the garage; those that are gone too.</param>
    public void Remember(IEnumerable<string> files)
    {
        foreach (var file in files)
        {
            left[file] = Look(file);
        }
    }

    /// <summary>Whether somebody else has changed a file: one of no act, or one that lies there otherwise than the last act left it.</summary>
    /// <param name="file">Its name inside the garage.</param>
    public bool IsNews(string file)
    {
        if (left.TryGetValue(file, out var ours) && ours == Look(file))
        {
            return false;
        }

        left.Remove(file);
        return true;
    }

    private (long Length, DateTime Written)? Look(string file) => new FileInfo(Path.Combine(folder, file)) is { Exists: true } found
        ? (found.Length, found.LastWriteTimeUtc)
        : null;
}
