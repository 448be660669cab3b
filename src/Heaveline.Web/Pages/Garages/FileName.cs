using Heaveline.Files.Garages;

namespace Heaveline.Web.Pages.Garages;

/// <summary>File names from titles.</summary>
internal static class FileName
{
    private const int Longest = 80;

    /// <summary>
    /// The letters, made small, and digits of a title with hyphens between its words, behind the name of the file that it changes: "Softer front" of
    /// fern-saloon is fern-saloon-softer-front.yaml. Empty for a title without any.
    /// </summary>
    public static string Of(string title, string behind)
    {
        var words = string.Concat(title.Select(c => char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' '))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var name = string.Join('-', words);
        return name.Length == 0 ? "" : $"{(behind.Length > 0 ? behind + "-" : "")}{(name.Length > Longest ? name[..Longest] : name)}.yaml";
    }

    /// <summary>Why nothing can be saved under a file's name, in words; null when something can, as far as the name goes.</summary>
    /// <param name="file">The name of the file, as <see cref="Of"/> or a reader writes it.</param>
    public static string? Problem(string file) => file.Length == 0
        ? "Give it a name with a letter or a digit in it: its file is called after it."
        : Path.GetFileName(file).Equals(GarageChoices.Name, StringComparison.OrdinalIgnoreCase)
            ? $"In {GarageChoices.Name} the garage remembers how it is read: no other file can have that name. Take another."
        : null;
}
