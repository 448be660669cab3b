using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Drives;

/// <summary>A decision of the reading that the user takes otherwise: "acceleration: mg", "time: column 3", "forward: 37°".</summary>
public sealed partial record Overruling
{
    private static readonly (string About, string[] Words, int Columns, string Says)[] Grammar =
    [
        ("separator", ["semicolon", "tab", "bar", "comma"], 0, "separator: semicolon, tab, bar or comma"),
        ("decimal", ["comma", "point"], 0, "decimal: comma or point"),
        ("time", ["s", "ms", "µs", "ns", "days"], 1, "time: s, ms, µs, ns or days; time: column 3 (or its name)"),
        ("acceleration", ["g", "m/s²", "mg", "with gravity", "without gravity"], 3,
            "acceleration: g, m/s², mg, with gravity or without gravity; acceleration: columns 2, 3, 4 (or their names)"),
        ("turn-rate", ["rad/s", "°/s", "none"], 3, "turn-rate: rad/s, °/s or none; turn-rate: columns 5, 6, 7 (or their names)"),
        ("speed", ["m/s", "km/h", "mph", "kn", "none"], 1, "speed: m/s, km/h, mph, kn or none; speed: column 8 (or its name)"),
        ("position", ["none"], 0, "position: none"),
        ("hand", ["as logged", "turned"], 0, "hand: as logged or turned"),
        ("moved", ["no"], 0, "moved: no"),
        ("forward", [], 0, "forward: 37° (from the axis that the story names, counter-clockwise seen from above)"),
        ("lag", [], 0, "lag: 0.8 s"),
    ];

    private static readonly Dictionary<string, string[]> OfStory = new(StringComparer.Ordinal)
    {
        ["layout"] = ["separator", "decimal"],
        ["header"] = ["time", "acceleration", "turn-rate", "speed"],
        ["time"] = ["time"],
        ["acceleration"] = ["acceleration"],
        ["acceleration-without-gravity"] = ["acceleration"],
        ["gravity"] = ["acceleration"],
        ["turn-rate"] = ["turn-rate"],
        ["speed"] = ["speed"],
        ["speed-unit"] = ["speed"],
        ["speed-fixes"] = ["speed"],
        ["position"] = ["position"],
        ["position-fixes"] = ["position"],
        ["speed-fits"] = ["speed", "lag"],
        ["gyro-axes"] = ["turn-rate"],
        ["bump-line"] = ["turn-rate", "forward"],
        ["hand"] = ["hand"],
        ["moved"] = ["moved"],
        ["turned-round"] = ["moved"],
        ["forward"] = ["forward"],
        ["lag"] = ["lag"],
    };

    private Overruling(string about) => About = about;

    /// <summary>What it is about: time, acceleration, turn-rate, speed, position, forward, lag, hand, moved, separator, decimal.</summary>
    public string About { get; }

    /// <summary>The word that is taken; blank where columns or an amount are.</summary>
    public string Word { get; private init; } = "";

    /// <summary>The columns that are taken, by number from 1 or by name; empty for none.</summary>
    public ImmutableArray<string> Columns { get; private init; } = [];

    /// <summary>The file that the columns stand in; blank where there is one alone.</summary>
    public string File { get; private init; } = "";

    /// <summary>The angle, rad, or the time, s, that is taken; null for none.</summary>
    public double? Amount { get; private init; }

    /// <summary>Half-width of its doubt; 0 where none is said.</summary>
    public double HalfWidth { get; private init; }

    /// <summary>All that can be said, a line each.</summary>
    public static IReadOnlyList<string> All => [.. Grammar.Select(g => g.Says)];

    /// <summary>What may be said instead of a line of the story; empty where nothing may.</summary>
    /// <param name="about">What the line is about.</param>
    public static IReadOnlyList<string> Instead(string about) =>
        OfStory.TryGetValue(about, out var abouts) ? [.. Grammar.Where(g => abouts.Contains(g.About)).Select(g => g.Says)] : [];

    /// <summary>Reads one.</summary>
    /// <param name="words">The words.</param>
    /// <param name="whyNot">Why there is none, a sentence; blank where there is.</param>
    /// <returns>Null where it says nothing that can be taken.</returns>
    public static Overruling? Of(string words, out string whyNot)
    {
        ArgumentNullException.ThrowIfNull(words);
        var colon = words.IndexOf(':', StringComparison.Ordinal);
        var about = colon < 0 ? words.Trim() : words[..colon].Trim();
        var how = colon < 0 ? "" : words[(colon + 1)..].Trim();
        var (name, known, columns, says) = Grammar.FirstOrDefault(g => g.About == about);
        if (name is null)
        {
            whyNot = $"'{about}' is nothing that can be taken otherwise; there are {string.Join(", ", Grammar.Select(g => g.About))}.";
            return null;
        }

        whyNot = "";
        var plain = how.Replace("us", "µs", StringComparison.Ordinal).Replace("deg/s", "°/s", StringComparison.Ordinal)
            .Replace("m/s^2", "m/s²", StringComparison.Ordinal).Replace("m/s2", "m/s²", StringComparison.Ordinal);
        if (known.Contains(how) || known.Contains(plain))
        {
            return new Overruling(name) { Word = known.Contains(how) ? how : plain };
        }

        if (columns > 0 && ColumnList().Match(how) is { Success: true } list)
        {
            ImmutableArray<string> named = [.. list.Groups["names"].Value.Split(',').Select(c => c.Trim().Trim('\'', '"'))];
            if (named.Length == columns && named.All(c => c.Length > 0))
            {
                return new Overruling(name) { Columns = named, File = list.Groups["file"].Value.Trim() };
            }
        }

        if (name == "forward" && QuantityText.Parse<Angle>(how) is { IsRead: true, Amount: var angle })
        {
            return new Overruling(name) { Amount = angle.Si, HalfWidth = angle.Doubt.HalfWidth };
        }

        if (name == "lag" && QuantityText.Parse<Time>(how) is { IsRead: true, Amount: var time } && Math.Abs(time.Si) <= 10.0)
        {
            return new Overruling(name) { Amount = time.Si, HalfWidth = time.Doubt.HalfWidth };
        }

        whyNot = $"'{words}': write {says}.";
        return null;
    }

    [GeneratedRegex("^columns? (?<names>.+?)( of (?<file>.+))?$")]
    private static partial Regex ColumnList();
}
