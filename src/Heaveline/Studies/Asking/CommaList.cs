using System.Text.RegularExpressions;

namespace Heaveline.Studies;

/// <summary>Values between commas. A comma between two digits belongs to its number.</summary>
internal static partial class CommaList
{
    /// <summary>The values, without blanks about them.</summary>
    public static string[] Of(string words) => [.. Separator().Split(words).Select(part => part.Trim())];

    /// <summary>Whether a comma stands between two digits.</summary>
    public static bool HasDecimalComma(string words) => DecimalComma().IsMatch(words);

    [GeneratedRegex("(?<![0-9]),|,(?![0-9])")]
    private static partial Regex Separator();

    [GeneratedRegex("[0-9],[0-9]")]
    private static partial Regex DecimalComma();
}
