using System.Net;
using System.Text.RegularExpressions;

namespace Heaveline.Tests.Cli;

/// <summary>What a page says.</summary>
internal static class PageText
{
    /// <summary>Its words as a reader sees them, a blank between any two; without figures and styles.</summary>
    /// <param name="page">The page, HTML.</param>
    public static string Plain(string page) => Regex.Replace(
        WebUtility.HtmlDecode(Regex.Replace(Regex.Replace(page, "<(svg|style) ?.*?</\\1>", " ", RegexOptions.Singleline), "<[^>]+>", " ")),
        "\\s+",
        " ");
}
