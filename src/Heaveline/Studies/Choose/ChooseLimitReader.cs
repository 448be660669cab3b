using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Limits as people write them: "roll at most 10 % more".</summary>
internal static partial class ChooseLimitReader
{
    /// <summary>How one may be written.</summary>
    public const string Example = "roll at most 10 % more";

    private static readonly (string Name, Func<ChooseLimits, double> Of, Func<ChooseLimits, double, ChooseLimits> With)[] Known =
    [
        ("worst use case", limits => limits.WorstRoad, (limits, share) => limits with { WorstRoad = share }),
        ("hit", limits => limits.Hit, (limits, share) => limits with { Hit = share }),
        ("roll", limits => limits.Roll, (limits, share) => limits with { Roll = share }),
        ("braking", limits => limits.Braking, (limits, share) => limits with { Braking = share }),
        ("lamp swing", limits => limits.LampSwing, (limits, share) => limits with { LampSwing = share }),
    ];

    /// <summary>What may be limited.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Known.Select(one => one.Name)];

    /// <summary>What holds where nothing else is said ("roll 5 %"), one after the other.</summary>
    public static string Usual { get; } = string.Join(
        ", ", Known.Select(one => FormattableString.Invariant($"{one.Name} {In.Percent.Of(one.Of(new ChooseLimits())):0.##} %")));

    /// <summary>The limits; the usual ones where none was given.</summary>
    /// <param name="reader">Gathers what is wrong.</param>
    /// <param name="choice">The choice.</param>
    public static ChooseLimits Read(AskedReader reader, Choice choice)
    {
        var limits = new ChooseLimits();
        foreach (var words in reader.Texts(choice))
        {
            var read = Written().Match(words.Trim());
            var named = Known.FirstOrDefault(one => one.Name == read.Groups["name"].Value);
            if (!read.Success || named.With is null
                || !double.TryParse(read.Groups["share"].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share))
            {
                reader.Object(choice.Name, $"'{words}' is no limit: write {Example}; there are {string.Join(", ", Names)}.");
                continue;
            }

            limits = named.With(limits, In.Percent.ToSi(share));
        }

        return limits;
    }

    [GeneratedRegex(@"^(?<name>[a-z ]+?) at most (?<share>[0-9]+(\.[0-9]+)?) ?%( more)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
