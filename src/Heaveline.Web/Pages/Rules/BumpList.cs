using Heaveline.Web.Pages.Parts;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Rules;

/// <summary>Roads with a bump on which hit and settling can be told apart.</summary>
internal static class BumpList
{
    /// <summary>By the names of the head and in its order: those that come with Heaveline and those of the garage.</summary>
    public static IReadOnlyList<ListEntry> Of(GarageView garageView) =>
    [
        .. garageView.RoadTitles.Where(road => garageView.Road(road.Name)?.Value?.Event is not null)
            .Select(road => new ListEntry(road.Name, road.Words)),
    ];
}
