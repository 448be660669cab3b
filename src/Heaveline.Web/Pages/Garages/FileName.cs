using Heaveline.Files.Garages;

namespace Heaveline.Web.Pages.Garages;

/// <summary>File names from titles, and what became of a new file.</summary>
internal static class FileName
{
    /// <summary>What is said where a title gives no name.</summary>
    public const string Nameless = "Give it a name with a letter or a digit in it: its file is called after it.";

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

    /// <summary>Why a new file is not there; empty where it is.</summary>
    /// <param name="saved">What became of it.</param>
    /// <param name="file">Its name.</param>
    /// <param name="advice">What to do where there is another file of that name; empty for nothing.</param>
    public static string Problem(SaveOutcome saved, string file, string advice = "Take another name.") => saved.End switch
    {
        SaveEnd.Saved or SaveEnd.Unchanged => "",
        SaveEnd.Conflict => $"There is a file {file} already, and it is left as it is. {advice}".TrimEnd(),
        _ => $"{saved.Message} {saved.Advice}",
    };

    /// <summary>Why nothing can be saved under a file's name, in words; null when something can, as far as the name goes.</summary>
    /// <param name="file">The name of the file, as <see cref="Of"/> or a reader writes it.</param>
    public static string? Problem(string file) => file.Length == 0 ? Nameless : GarageChoices.Reserved(file);
}
