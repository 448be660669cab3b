using Heaveline.Files.Cars;
using Heaveline.Studies;
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
        string[] others =
        [
            .. QueryHelpers.ParseQuery(query).Keys.Where(key => key.Length > 0 && !known.Contains(key))
                .Where(key => page.Path != "road" || !key.StartsWith(RoadDraft.Sized, StringComparison.OrdinalIgnoreCase))
                .Select(key => $"“{Short(key)}”"),
        ];
        var more = others.Length > Most ? FormattableString.Invariant($" and {others.Length - Most} more") : "";
        var sentence = $"This page reads nothing of {string.Join(", ", others.Take(Most))}{more} in its address.";
        return
        [
            .. others.Length > 0 ? [sentence] : Array.Empty<string>(),
            // The pass does not drive with it, and says so itself; a speed is refused beside its box.
            .. page.Path == PageEntry.Pass || page.IsApart ? []
                : PassState.Of(query, "none").Objections.Where(one => one.Choice != CurrentCar.SpeedKey).Take(Most).Select(one => one.Sentence),
        ];
    }

    private static IEnumerable<string> Own(string page) => page switch
    {
        "" => [nameof(Pages.GaragePage.Find)],
        "car" => [nameof(Pages.CarPage.Open)],
        "road" => [nameof(Pages.RoadPage.File), nameof(Pages.RoadPage.From), RoadDraft.Named, RoadDraft.Kinds],
        "sheet" => GarageSheet.Lines.SelectMany(line => new[] { line.Key, line.Key + Pages.SheetPage.ReadingsKey })
            .Append(SheetReading.Named).Append(GarageSheet.BodyStyle),
        "rule" => RuleStudy.OnPage.Choices.Select(choice => choice.Name).Append(Pages.RulePage.Marks.Name),
        PageEntry.Link => LinkStudy.OnPage.Choices.Select(choice => choice.Name),
        CurrentCar.Ride => RidePageChoices.All.Select(choice => choice.Name),
        CurrentCar.Report => Pages.Reports.ReportQuery.Keys,
        _ => [],
    };

    private static string Short(string key) => key.Length <= Longest ? key : key[..Longest] + "…";
}
