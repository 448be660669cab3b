using Heaveline.Quantities;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Frame;

/// <summary>A page as the head names it, and the step of the job that follows on it.</summary>
/// <param name="Path">Its address from the base of the pages; blank for the garage.</param>
/// <param name="Words">What it is called.</param>
/// <param name="Next">The page of the next step; null where the page itself leads on.</param>
/// <param name="NextWords">The next step in words.</param>
public sealed record PageEntry(string Path, string Words, string? Next = null, string NextWords = "")
{
    /// <summary>All pages in their order.</summary>
    public static IReadOnlyList<PageEntry> All { get; } =
    [
        new("", "Heaveline", "pass", "drive the car in hand over a bump"),
        new("car", "The car", "pass", "drive it over a bump"),
        new("sheet", "A new car"),
        new("pass", "The pass", "rule", "see at which values and speeds it would nod less"),
        new("rule", "The rule", CurrentCar.Ride, "see how it goes on a long rough road"),
        new(CurrentCar.Ride, "The ride", "report", "put what was found on paper"),
        new("road", "The road", "pass", "drive the car in hand over a bump"),
        new("drive", "The drive", "report", "put what was found on paper"),
        new("report", "The report", "drive", "prove the change with a phone on the floor"),
        new("phone", "The phone", "drive", "read what was recorded"),
    ];

    /// <summary>Whether the page shows a car even where its address names none.</summary>
    public bool ShowsCar => Path is "pass" or "rule" or CurrentCar.Ride or "report";

    /// <summary>Whether its address says nothing of the car in hand: the sheet's own keys are others, and a phone records what it is in.</summary>
    public bool IsApart => Path is "sheet" or "phone";

    /// <summary>Speed where none is said, km/h as the page takes it.</summary>
    public string UsualSpeed => Path switch
    {
        CurrentCar.Ride => Pages.Rides.RidePageChoices.At.Usual!.Split(' ')[0],
        "report" => Heaveline.Reports.ReportStudy.Speed.Usual!.Split(' ')[0],
        _ => Rounded.Text(Pages.Passes.PassState.UsualSpeed),
    };
}
