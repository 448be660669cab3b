using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Drives;

/// <summary>What the page shows of a drive.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Strip">The whole drive at a glance.</param>
public sealed record DriveView(DriveAnswer Answer, Figure Strip)
{
    /// <summary>The view of an answer.</summary>
    public static DriveView Of(DriveAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return new DriveView(answer, answer.Figure(DriveAnswer.Strip));
    }
}
