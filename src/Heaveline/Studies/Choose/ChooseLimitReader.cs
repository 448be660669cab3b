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

    // The one that must be large.
    private const string LeastLoad = "least tyre load";

    private static readonly LimitWords[] Known =
    [
        new("worst use case", limits => limits.WorstRoad, (limits, more) => limits with { WorstRoad = more })
        {
            WithShare = (limits, share) => limits with { WorstRoadShare = share },
        },
        new("hit", limits => limits.Hit, (limits, more) => limits with { Hit = more })
        {
            WithShare = (limits, share) => limits with { HitShare = share },
        },
        new("grip", limits => limits.Grip, (limits, more) => limits with { Grip = more })
        {
            WithShare = (limits, share) => limits with { GripShare = share },
        },
        new(LeastLoad, limits => limits.LeastLoad, (limits, least) => limits with { LeastLoad = least })
        {
            WithShare = (limits, share) => limits with { LeastLoadShare = share },
        },
        new("roll", limits => limits.Roll, (limits, more) => limits with { Roll = more }),
        new("braking", limits => limits.Braking, (limits, more) => limits with { Braking = more }),
        new("lamp swing", limits => limits.LampSwing, (limits, more) => limits with { LampSwing = more }),
    ];

    /// <summary>What may be limited.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Known.Select(one => one.Name)];

    /// <summary>What holds where nothing else is said ("roll 5 %"), one after the other.</summary>
    public static string Usual { get; } = string.Join(", ", Known.Select(one => (one.Name, Most: one.Of(new ChooseLimits())))
        .Where(one => one.Most is not null).Select(one => FormattableString.Invariant($"{one.Name} {In.Percent.Of(one.Most!.Value):0.##} %")));

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
            if (Written().Match(words.Trim()) is { Success: true } named && !names.Add(named.Groups["name"].Value))
            {
                reader.Object(
                    choice.Name, $"'{words}' is a second limit of {named.Groups["name"].Value}: only one of them can hold. Leave one of them out.");
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
        var read = Written().Match(words.Trim());
        var named = Known.FirstOrDefault(one => one.Name == read.Groups["name"].Value);
        if (!read.Success || named is null || Number(read, "more") is not { } more
            || (read.Groups["way"].Value == "least") != (named.Name == LeastLoad) || (named.Name == LeastLoad && more >= 100.0))
        {
            return (limits, Refused(
                $"'{words}' is no limit.", $"Write {Example}, or {LeastLoad} at least 20 %; there are {string.Join(", ", Names)}."));
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

    // A limit by its name: its usual value, how it is set, and how the share of drawn cars is set in which it must hold.
    private sealed record LimitWords(string Name, Func<ChooseLimits, double?> Of, Func<ChooseLimits, double, ChooseLimits> With)
    {
        /// <summary>Null where it holds in the car as stated.</summary>
        public Func<ChooseLimits, double, ChooseLimits>? WithShare { get; init; }
    }

    private static double? Number(Match read, string group) =>
        double.TryParse(read.Groups[group].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    [GeneratedRegex(
        @"^(?<name>[a-z ]+?) at (?<way>most|least) (?<more>[0-9]+(\.[0-9]+)?) ?%( more)?(, in (?<in>[0-9]{1,4}) of (?<of>[0-9]{1,4}) cars)?$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
