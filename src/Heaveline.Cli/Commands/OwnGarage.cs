namespace Heaveline.Cli.Commands;

/// <summary>The folder of one's own cars where none was named and no invented ones come with the program.</summary>
internal static class OwnGarage
{
    /// <summary>Its name.</summary>
    public const string Name = "my-garage";

    /// <summary>It in the first of some folders that lets one be made there; null when none does.</summary>
    /// <param name="folders">Where to look, in order; empty names are passed over.</param>
    public static string? In(params IEnumerable<string> folders)
    {
        foreach (var folder in folders.Where(folder => folder.Length > 0))
        {
            try
            {
                return Directory.CreateDirectory(Path.Combine(folder, Name)).FullName;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // The next one is tried; whoever asks says it when none is left.
                continue;
            }
        }

        return null;
    }
}
