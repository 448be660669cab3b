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
    /// <summary>The page that tells one car's story from end to end.</summary>
    public const string Story = "story";

    /// <summary>The page of the drive.</summary>
    public const string Drive = "drive";

    /// <summary>The page of a film from the roadside.</summary>
    public const string Film = "film";

    /// <summary>The page of the pass.</summary>
    public const string Pass = "pass";

    /// <summary>The page of what joins front and rear.</summary>
    public const string Link = "link";

    /// <summary>The page of what to buy.</summary>
    public const string Choose = "choose";

    /// <summary>All pages in their order.</summary>
    public static IReadOnlyList<PageEntry> All { get; } =
    [
        new("", "Heaveline", Pass, "drive the car in hand over a bump"),
        new(Story, "A first story"),
        new("car", "The car", Pass, "drive it over a bump"),
        new("sheet", "A new car"),
        new(Pass, "The pass", "rule", "see at which values and speeds it would nod less"),
        new("rule", "The rule", CurrentCar.Ride, "see how it goes on a long rough road"),
        new(Link, "The link", Pass, "drive the car in hand over a bump"),
        new(Choose, "The choice", Pass, "drive the car in hand over a bump"),
        new(CurrentCar.Ride, "The ride", CurrentCar.Report, "put what was found on paper"),
        new("road", "The road", Pass, "drive the car in hand over a bump"),
        new(Drive, "The drive", CurrentCar.Report, "put what was found on paper"),
        new(Film, "The film", Pass, "drive the car in hand over a bump"),
        new(CurrentCar.Report, "The report", Drive, "prove the change with a phone on the floor"),
        new("phone", "The phone", Drive, "read what was recorded"),
    ];

    /// <summary>Whether the page shows a car even where its address names none.</summary>
    public bool ShowsCar => Path is Pass or "rule" or Link or Choose or CurrentCar.Ride or CurrentCar.Report;

    /// <summary>
    /// Whether its address says nothing of the car in hand: the sheet has other keys, a phone records what it is in, the story has its own car.
    /// </summary>
    public bool IsApart => Path is "sheet" or "phone" or Story;

    /// <summary>What it says of itself when it is asked.</summary>
    public PageHelp Help => PageHelp.Of(Path);

    /// <summary>Speed where none is said, km/h as the page takes it.</summary>
    public string UsualSpeed => Path switch
    {
        CurrentCar.Ride => Pages.Rides.RidePageChoices.At.Usual!.Split(' ')[0],
        CurrentCar.Report => Heaveline.Reports.ReportStudy.Speed.Usual!.Split(' ')[0],
        _ => Rounded.Text(Pages.Passes.PassState.UsualSpeed),
    };
}
