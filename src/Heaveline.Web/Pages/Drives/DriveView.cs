using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Drives;

/// <summary>What the page shows of a drive.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Strip">The whole drive at a glance.</param>
/// <param name="Overlay">The bumps of each site one over the other; null where none count.</param>
/// <param name="Card">The car as intervals beside its file's values; null where it is not told.</param>
/// <param name="Sites">The bumps, site by site, as small multiples.</param>
public sealed record DriveView(DriveAnswer Answer, Figure Strip, Figure? Overlay, Figure? Card, ImmutableArray<SiteCards> Sites)
{
    /// <summary>The view of an answer.</summary>
    public static DriveView Of(DriveAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var counts = answer.Events?.Kept.Any() == true;
        return new DriveView(
            answer,
            answer.Figure(DriveAnswer.Strip),
            counts ? answer.Figure(DriveAnswer.Overlay) : null,
            answer.FigureIds.Contains(DriveAnswer.CarCard) ? answer.Figure(DriveAnswer.CarCard) : null,
            answer.Events is null ? [] : SiteCards.Of(answer.Events, EventTraces.Of(answer.Drive, answer.Events)));
    }
}
