using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Studies;
using Heaveline.Web.Pages.Films;
using Heaveline.Web.Pages.Garages;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Pages.Rides;
using Heaveline.Web.Pages.Roads;
using Heaveline.Web.Tuning;
using Microsoft.AspNetCore.WebUtilities;

namespace Heaveline.Web.Frame;

/// <summary>What of a page's address nothing on it reads: a key that it does not have, and a setting that nobody can read as a number.</summary>
internal static class AddressWords
{
    private const int Most = 4;
    private const int Longest = 40;

    // What is in hand, as every page's address says it.
    private static readonly string[] InHand =
    [
        "car", "load", "road", "over", "at", "beside", "seat", CurrentCar.SpeedKey, CurrentCar.HeightKey, CurrentCar.SpringsKey,
        CurrentCar.InertiaKey, CurrentCar.LogKey, CurrentCar.DriveKey, CurrentCar.PinsKey, .. CurrentCar.TrialKeys,
    ];

    /// <summary>A sentence on each; none where all is read.</summary>
    /// <param name="page">The page.</param>
    /// <param name="query">The address's query, with or without its question mark.</param>
    public static IReadOnlyList<string> Of(PageEntry page, string query)
    {
        ArgumentNullException.ThrowIfNull(page);
        var known = Own(page.Path).Concat(InHand).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var said = QueryHelpers.ParseQuery(query);
        string[] others =
        [
            .. said.Keys.Where(key => key.Length > 0 && !known.Contains(key))
                .Where(key => page.Path != "road" || !key.StartsWith(RoadDraft.Sized, StringComparison.OrdinalIgnoreCase))
                .Select(key => $"“{Short(key)}”"),
        ];
        var more = others.Length > Most ? FormattableString.Invariant($" and {others.Length - Most} more") : "";
        var sentence = $"This page reads nothing of {string.Join(", ", others.Take(Most))}{more} in its address.";
        return
        [
            .. others.Length > 0 ? [sentence] : Array.Empty<string>(),
            .. said.Where(one => one.Value.Any(words => words is not null && words.Any(ControlCharacter.Is))).Take(Most).Select(one =>
                $"“{Short(one.Key)}” of this address holds a character that is not seen: {Short(Spelled(one.Value))}. No name or value holds one."),
            .. said.Where(one => known.Contains(one.Key)).Select(one => Twice(page, one.Key, one.Value.Count)).OfType<string>().Take(Most),
            // The pass does not drive with it, and says so itself; a speed is refused beside its box.
            .. page.Path == PageEntry.Pass || page.IsApart ? []
                : PassState.Of(query, "none").Objections.Where(one => one.Choice != CurrentCar.SpeedKey).Take(Most).Select(one => one.Sentence),
        ];
    }

    private static IEnumerable<string> Own(string page) => page switch
    {
        "" => [nameof(Pages.GaragePage.Find), nameof(Pages.GaragePage.Brought)],
        "car" => [nameof(Pages.CarPage.Open)],
        "road" => [nameof(Pages.RoadPage.File), nameof(Pages.RoadPage.From), RoadDraft.Named, RoadDraft.Kinds],
        "sheet" => GarageSheet.Lines.SelectMany(line => new[] { line.Key, line.Key + Pages.SheetPage.ReadingsKey })
            .Append(SheetReading.Named).Append(GarageSheet.BodyStyle),
        "rule" => RuleStudy.OnPage.Choices.Select(choice => choice.Name).Append(Pages.RulePage.Marks.Name),
        PageEntry.Choose => Pages.Chosen.ChooseQuery.All.Select(choice => choice.Name),
        PageEntry.Link => LinkStudy.OnPage.Choices.Select(choice => choice.Name),
        PageEntry.Film => FilmReading.All.Select(choice => choice.Name),
        CurrentCar.Ride => RidePageChoices.All.Select(choice => choice.Name),
        CurrentCar.Report => Pages.Reports.ReportQuery.Keys,
        _ => [],
    };

    private static string Spelled(IEnumerable<string?> values) =>
        ControlCharacter.Spelled(values.OfType<string>().First(words => words.Any(ControlCharacter.Is)));

    // What a choice of parts or a film may be asked of more than once is read as often; a report names its cars and drives one after the other;
    // elsewhere a second car is the one beside.
    private static string? Twice(PageEntry page, string key, int times) => key switch
    {
        CurrentCar.DriveKey => null,
        _ when page.Path == PageEntry.Film && FilmReading.All.Any(choice => choice.IsRepeated && choice.Name == key) => null,
        _ when page.Path == PageEntry.Choose && ChooseStudy.Question.Choices.Any(choice => choice.IsRepeated && choice.Name == key) => null,
        "car" when page.Path == CurrentCar.Report || times <= 2 => null,
        "car" => FormattableString.Invariant($"“car” stands {times} times in this address: the first is read, and the second as the car beside it."),
        _ when times > 1 => FormattableString.Invariant($"“{Short(key)}” stands {times} times in this address: the last is read."),
        _ => null,
    };

    private static string Short(string key) => key.Length <= Longest ? key : key[..Longest] + "…";
}
