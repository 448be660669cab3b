using Heaveline.Files.Drives;
using Heaveline.Files.Editing;
using Heaveline.Files.Garages;

namespace Heaveline.Web.Pages.Drives;

/// <summary>Changes what was written down about a drive, in its file, as a person would: one key at a time, if the result is sound.</summary>
internal static class DriveNotebook
{
    /// <summary>Writes a value under a key, or takes the key out.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="drive">The drive, as it was read.</param>
    /// <param name="path">The key.</param>
    /// <param name="value">The value as it stands in the file; blank takes the key out.</param>
    /// <returns>Why it was not done, with what to do; empty when it was.</returns>
    public static string Write(Garage garage, DriveSource drive, IReadOnlyList<string> path, string value)
    {
        if (value.Trim().Length > 0)
        {
            return Save(garage, drive, KeyEdit.Put(path, value.Trim()));
        }

        if (drive.At([.. path]) is null)
        {
            return "";
        }

        // A group goes with its last value.
        var isLast = path.Count > 1 && drive.At([.. path.SkipLast(1)]) is { Entries.Count: 1 };
        return Save(garage, drive, KeyEdit.Remove(isLast ? [.. path.SkipLast(1)] : path));
    }

    /// <summary>Does an edit.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="drive">The drive, as it was read.</param>
    /// <param name="edit">The edit.</param>
    /// <returns>Why it was not done, with what to do; empty when it was.</returns>
    public static string Save(Garage garage, DriveSource drive, KeyEdit edit)
    {
        var edited = DriveFile.Edit(drive.Text, edit);
        if (edited.Text is null)
        {
            return $"{edited.Refusal!.Message} {edited.Refusal.Advice}";
        }

        var file = DriveFolders.FileOf(drive.Folder);
        if (garage.Drive(file, edited.Text).Refusals is [var first, ..])
        {
            return $"{first.Message} {first.Advice}";
        }

        var saved = garage.Save(file, edited.Text, Stamp.Of(drive.Text));
        return saved.End switch
        {
            SaveEnd.Saved or SaveEnd.Unchanged => "",
            SaveEnd.Conflict => "The file was changed meanwhile by somebody else; what it says now is shown. Do it again.",
            _ => $"{saved.Message} {saved.Advice}",
        };
    }
}
