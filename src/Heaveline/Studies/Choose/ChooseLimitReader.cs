using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Limits as people write them: "hit at most 10 % more, in 19 of 20 cars".</summary>
public static partial class ChooseLimitReader
{
    /// <summary>How one may be written.</summary>
    public const string Example = "roll at most 10 % more";

    // Of fewer than every second car nobody would call it a limit; of more than this no draws show it.
    private const double LeastShare = 0.5;
    private const double MostShare = 0.99;

    private static readonly (string Name, Func<ChooseLimits, double> Of, Func<ChooseLimits, double, ChooseLimits> With,
        Func<ChooseLimits, double, ChooseLimits>? WithShare)[] Known =
    [
        ("worst use case", limits => limits.WorstRoad, (limits, more) => limits with { WorstRoad = more },
            (limits, share) => limits with { WorstRoadShare = share }),
        ("hit", limits => limits.Hit, (limits, more) => limits with { Hit = more }, (limits, share) => limits with { HitShare = share }),
        ("roll", limits => limits.Roll, (limits, more) => limits with { Roll = more }, null),
        ("braking", limits => limits.Braking, (limits, more) => limits with { Braking = more }, null),
        ("lamp swing", limits => limits.LampSwing, (limits, more) => limits with { LampSwing = more }, null),
    ];

    /// <summary>What may be limited.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Known.Select(one => one.Name)];

    /// <summary>What holds where nothing else is said ("roll 5 %"), one after the other.</summary>
    public static string Usual { get; } = string.Join(
        ", ", Known.Select(one => FormattableString.Invariant($"{one.Name} {In.Percent.Of(one.Of(new ChooseLimits())):0.##} %")));

    /// <summary>Why words are no limit; null where they are one.</summary>
    public static QuantityRefusal? Refusal(string words) => With(words, new ChooseLimits()).Refusal;

    /// <summary>The limits; the usual ones where none was given.</summary>
    /// <param name="reader">Gathers what is wrong.</param>
    /// <param name="choice">The choice.</param>
    internal static ChooseLimits Read(AskedReader reader, Choice choice)
    {
        var limits = new ChooseLimits();
        foreach (var words in reader.Texts(choice))
        {
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
        var read = Written().Match(words.Trim());
        var named = Known.FirstOrDefault(one => one.Name == read.Groups["name"].Value);
        if (!read.Success || named.With is null || Number(read, "more") is not { } more)
        {
            return (limits, Refused($"'{words}' is no limit.", $"Write {Example}; there are {string.Join(", ", Names)}."));
        }

        limits = named.With(limits, In.Percent.ToSi(more));
        if (!read.Groups["of"].Success)
        {
            return (limits, null);
        }

        var share = Number(read, "in") / Number(read, "of") ?? double.NaN;
        return named.WithShare is null
                ? (limits, Refused($"'{words}' names a share of cars; {named.Name} is limited in the car as stated.", "Leave the share out."))
            : !(share >= LeastShare && share <= MostShare)
                ? (limits, Refused($"'{words}' names no share of cars that draws can show.", "Write 1 of 2 to 99 of 100, such as in 9 of 10 cars."))
            : (named.WithShare(limits, share), null);

        QuantityRefusal Refused(string message, string advice) => new(0, Math.Max(1, words.Length), message, advice);
    }

    private static double? Number(Match read, string group) =>
        double.TryParse(read.Groups[group].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    [GeneratedRegex(
        @"^(?<name>[a-z ]+?) at most (?<more>[0-9]+(\.[0-9]+)?) ?%( more)?(, in (?<in>[0-9]{1,4}) of (?<of>[0-9]{1,4}) cars)?$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
