using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// A number that may be limited: how that is written, and what becomes of the limits. This list is all there is: command, file, schema and help take
/// the words from it.
/// </summary>
internal sealed record ChooseLimitKind
{
    private const string Number = "[0-9]+(?:[.][0-9]+)?";

    // At most so much more than now, or no more than now.
    private const string More = $"at most (?:(?<more>{Number}) ?%(?: more)?|as now)";

    // Both axles' numbers with their axle behind them, or one for both.
    private const string Travel = $"at least (?<one>{Number} ?[a-z]+)(?: (?<first>front|rear))?"
        + $"(?:,? (?:and )?(?<two>{Number} ?[a-z]+) (?<second>front|rear))?(?:, with any load)?";

    private const string Share = ", in (?<in>[0-9]{1,4}) of (?<of>[0-9]{1,4}) cars";

    private ChooseLimitKind(string name, string form, Func<ChooseLimits, Match, ChooseLimits?> with)
    {
        (Name, With) = (name, with);
        var words = form.Length == 0 ? name : $"{name} {form}";
        Pattern = GroupName.Replace(words, "(?:");
        Written = new Regex($"^{words}(?:{Share})?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture);
    }

    /// <summary>All of them.</summary>
    public static ImmutableArray<ChooseLimitKind> All { get; } =
    [
        new("worst use case", More, (limits, read) => limits with { WorstRoad = Grown(read) })
        {
            WithShare = (limits, share) => limits with { WorstRoadShare = share },
            Usual = limits => limits.WorstRoad,
        },
        new("hit", More, (limits, read) => limits with { Hit = Grown(read) })
        {
            WithShare = (limits, share) => limits with { HitShare = share },
            Usual = limits => limits.Hit,
        },
        new("grip", More, (limits, read) => limits with { Grip = Grown(read) })
        {
            WithShare = (limits, share) => limits with { GripShare = share },
        },
        new("least tyre load", $"at least (?<least>{Number}) ?%", (limits, read) =>
            Value(read, "least") is { } least and < 100.0 ? limits with { LeastLoad = In.Percent.ToSi(least) } : null)
        {
            WithShare = (limits, share) => limits with { LeastLoadShare = share },
        },
        new("bump travel left", Travel, (limits, read) => TravelOf(read) is { } bump ? limits with { BumpLeft = bump } : null)
        {
            WithShare = (limits, share) => limits with { BumpLeft = limits.BumpLeft! with { Share = share } },
        },
        new("droop travel left", Travel, (limits, read) => TravelOf(read) is { } droop ? limits with { DroopLeft = droop } : null)
        {
            WithShare = (limits, share) => limits with { DroopLeft = limits.DroopLeft! with { Share = share } },
        },
        new("never metal to metal", "", (limits, _) => limits with { NeverMetal = ChooseLimits.UsualShare })
        {
            WithShare = (limits, share) => limits with { NeverMetal = share },
        },
        new("roll", More, (limits, read) => limits with { Roll = Grown(read) }) { Usual = limits => limits.Roll },
        new("braking", More, (limits, read) => limits with { Braking = Grown(read) }) { Usual = limits => limits.Braking },
        // A swing is itself so many percent: without "more" or "in all" it could be either.
        new("lamp swing", $"at most (?:(?<more>{Number}) ?%(?:(?<all> in all)| more)|as now)", (limits, read) => read.Groups["all"].Success
            ? limits with { LampSwingInAll = Grown(read) }
            : limits with { LampSwing = Grown(read) })
        {
            Usual = limits => limits.LampSwing,
        },
    ];

    /// <summary>What is limited.</summary>
    public string Name { get; }

    /// <summary>The limit in a regular expression that every reader of such knows, no share behind it.</summary>
    public string Pattern { get; }

    /// <summary>Any of them with its share, as files and their schema have it.</summary>
    public static string AnyPattern { get; } =
        $@"^\s*(?:{string.Join('|', All.Select(kind => kind.Pattern))})(?:{GroupName.Replace(Share, "(?:")})?\s*$";

    /// <summary>The words, their numbers in groups.</summary>
    public Regex Written { get; }

    /// <summary>The limits with this one as it was written; null where its number can hold for no car.</summary>
    public Func<ChooseLimits, Match, ChooseLimits?> With { get; }

    /// <summary>The same with the share of drawn cars in which it must hold; null where it holds in the car as stated.</summary>
    public Func<ChooseLimits, double, ChooseLimits>? WithShare { get; init; }

    /// <summary>What holds where nothing is said; null for no limit.</summary>
    public Func<ChooseLimits, double>? Usual { get; init; }

    private static Regex GroupName => new(@"\(\?<\w+>", RegexOptions.CultureInvariant);

    private static double Grown(Match read) => In.Percent.ToSi(Value(read, "more") ?? 0.0);

    private static double? Value(Match read, string group) =>
        double.TryParse(read.Groups[group].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    // One number holds for both axles; with an axle behind it, for that alone.
    private static ChooseTravelLimit? TravelOf(Match read)
    {
        string Group(string name) => read.Groups[name].Value;
        var (one, two) = (Metres(Group("one")), read.Groups["two"].Success ? Metres(Group("two")) : null);
        if (one is null || (read.Groups["two"].Success && (two is null || Group("first").Length == 0 || Group("first") == Group("second"))))
        {
            return null;
        }

        double? At(string axle) => Group("first").Length == 0 || Group("first") == axle ? one : Group("second") == axle ? two : null;
        return new ChooseTravelLimit(At("front"), At("rear"));
    }

    private static double? Metres(string words) =>
        QuantityText.Parse<Length>(words) is { IsRead: true, Amount.Si: >= 0.0 and <= ChooseTravelLimit.Most and var length } ? length : null;
}
