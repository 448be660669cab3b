using Heaveline.Files.Roads;
using Heaveline.Web.Pages.Parts;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Rules;

/// <summary>Roads with a bump on which hit and settling can be told apart.</summary>
internal static class BumpList
{
    /// <summary>Those that come with Heaveline, then those of the garage.</summary>
    public static IReadOnlyList<ListEntry> Of(GarageView garageView) =>
    [
        .. NamedRoads.All.Where(r => r.Value.Event is not null).Select(r => new ListEntry(r.Key, r.Key.Replace('-', ' '))),
        .. garageView.GarageRoads.Where(name => garageView.Road(name)?.Value?.Event is not null)
            .Select(name => new ListEntry(name, Path.GetFileNameWithoutExtension(name), "In the garage")),
    ];
}
