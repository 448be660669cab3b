using System.Globalization;
using System.Text;

namespace Heaveline.Web.Pages.Describing;

/// <summary>File names from titles.</summary>
internal static class FileName
{
    private const int Longest = 80;

    /// <summary>Small letters, digits and hyphens of a title, behind the name of the file that it changes: "Softer front" of fern-saloon is fern-saloon-softer-front.yaml. Empty for a title without any.</summary>
    public static string Of(string title, string behind)
    {
        // Accents are taken off their letters; what is no letter or digit parts words.
        var plain = title.Normalize(NormalizationForm.FormD).Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark);
        var words = string.Concat(plain.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var name = string.Join('-', words);
        return name.Length == 0 ? "" : $"{(behind.Length > 0 ? behind + "-" : "")}{(name.Length > Longest ? name[..Longest] : name)}.yaml";
    }
}
