using Heaveline.Files.Cars;
using Heaveline.Reports;

namespace Heaveline.Files.Reporting;

/// <summary>The command line that makes a report again: every choice written out, so that a later default changes nothing.</summary>
/// <param name="asked">What was asked.</param>
/// <param name="files">What the files are called.</param>
/// <param name="road">What the road is called.</param>
internal sealed class AskedLine(ReportAsked asked, SharedFolder files, string road)
{
    // What no common shell takes for anything but itself.
    private const string Plain = "-_.,/:";

    public string Of(string title, IEnumerable<PartKind> parts, IEnumerable<CarReading> cars)
    {
        List<string> words =
        [
            "heaveline", "report", .. cars.Select(c => files.NameOf(c.Sources[0].File)),
            "--road", road,
            "--speed", asked.Speed, "--speeds", asked.Speeds,
            .. asked.Load is null ? [] : new[] { "--load", asked.Load },
            "--class", asked.Class, "--rule", asked.Rule, "--samples", FormattableString.Invariant($"{asked.Samples}"), "--seed", FormattableString.Invariant($"{asked.Seed}"),
            "--parts", string.Join(',', parts).ToLowerInvariant(),
            "--title", title,
            .. asked.Author.Length > 0 ? ["--author", asked.Author] : Array.Empty<string>(),
            .. asked.Date.Length > 0 ? ["--date", asked.Date] : Array.Empty<string>(),
            .. asked.IsPdf ? ["--paper", asked.Paper] : Array.Empty<string>(),
            "--out", Path.GetFileName(asked.Out),
        ];
        return string.Join(' ', words.Select(Quoted));
    }

    /// <summary>
    /// A word as a POSIX shell reads it [IEEE Std 1003.1-2024, Shell Command Language, 2.2 Quoting]. Names in car files come from anywhere, and people paste
    /// such lines: what a shell would run inside double quotes goes between single ones, where nothing is run.
    /// </summary>
    public static string Quoted(string word) =>
        word.Length > 0 && word.All(c => char.IsAsciiLetterOrDigit(c) || Plain.Contains(c, StringComparison.Ordinal)) ? word
        : word.AsSpan().ContainsAny("$`!") ? $"'{word.Replace("'", "'\\''", StringComparison.Ordinal)}'"
        : $"\"{word.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
