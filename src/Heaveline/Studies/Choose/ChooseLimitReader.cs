using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Limits as people write them: "hit at most 10 % more, in 19 of 20 cars".</summary>
public static class ChooseLimitReader
{
    /// <summary>How one may be written.</summary>
    public const string Example = "roll at most 10 % more";

    // Of fewer than every second car nobody would call it a limit; of more than this no draws show it.
    private const double LeastShare = 0.5;
    private const double MostShare = 0.99;

    // How those are written that are no growth.
    private const string Others =
        "least tyre load at least 20 %, bump travel left at least 40 mm front, 30 mm rear, never metal to metal, or lamp swing at most 1.2 % in all";

    /// <summary>What may be limited.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. ChooseLimitKind.All.Select(one => one.Name)];

    /// <summary>What holds where nothing else is said ("roll 5 %"), one after the other.</summary>
    public static string Usual { get; } = string.Join(", ", ChooseLimitKind.All.Where(one => one.Usual is not null)
        .Select(one => FormattableString.Invariant($"{one.Name} {In.Percent.Of(one.Usual!(new ChooseLimits())):0.##} %")));

    /// <summary>Any limit as a regular expression.</summary>
    public static string Pattern => ChooseLimitKind.AnyPattern;

    /// <summary>What words limit, by its name; null for nothing.</summary>
    public static string? NameOf(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return ChooseLimitKind.All.FirstOrDefault(one => one.Written.IsMatch(words.Trim()))?.Name;
    }

    /// <summary>Why words are no limit; null where they are one.</summary>
    public static QuantityRefusal? Refusal(string words) => With(words, new ChooseLimits()).Refusal;

    /// <summary>The limits; the usual ones where none was given.</summary>
    /// <param name="reader">Gathers what is wrong.</param>
    /// <param name="choice">The choice.</param>
    internal static ChooseLimits Read(AskedReader reader, Choice choice)
    {
        var (limits, names) = (new ChooseLimits(), new HashSet<string>(StringComparer.Ordinal));
        foreach (var words in reader.Texts(choice))
        {
            if (NameOf(words) is { } name && !names.Add(name))
            {
                reader.Object(choice.Name, $"'{words}' is a second limit of {name}: only one of them can hold. Leave one of them out.");
                continue;
            }

            var (read, refusal) = With(words, limits);
            if (refusal is not null)
            {
                reader.Object(choice.Name, refusal.Message + " " + refusal.Advice);
            }

            limits = read;
        }

        return limits;
    }

    private static (ChooseLimits Limits, QuantityRefusal? Refusal) With(string words, ChooseLimits limits)
    {
        var (named, read) = ChooseLimitKind.All.Select(one => (one, one.Written.Match(words.Trim())))
            .FirstOrDefault(one => one.Item2.Success);
        if (named is null || named.With(limits, read) is not { } limited)
        {
            return (limits, Refused(
                $"'{words}' is no limit.", $"Write {Example}, roll at most as now, {Others}; there are {string.Join(", ", Names)}."));
        }

        if (!read.Groups["of"].Success)
        {
            return (limited, null);
        }

        var share = Whole(read, "in") / Whole(read, "of");
        return named.WithShare is null
                ? (limits, Refused($"'{words}' names a share of cars; {named.Name} is limited in the car as stated.", "Leave the share out."))
            : !(share >= LeastShare && share <= MostShare)
                ? (limits, Refused($"'{words}' names no share of cars that draws can show.", "Write 1 of 2 to 99 of 100, such as in 9 of 10 cars."))
            : (named.WithShare(limited, share), null);

        QuantityRefusal Refused(string message, string advice) => new(0, Math.Max(1, words.Length), message, advice);
    }

    private static double Whole(Match read, string group) => double.Parse(read.Groups[group].Value, NumberStyles.None, CultureInfo.InvariantCulture);
}
