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
}
