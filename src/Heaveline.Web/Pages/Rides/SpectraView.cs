using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Rides;

/// <summary>What the page shows of one speed, of the first car.</summary>
/// <param name="Spectra">Response spectra with the wheelbase filter.</param>
/// <param name="Transfer">From road to body.</param>
public sealed record SpectraView(Figure Spectra, Figure Transfer)
{
    private const int Capacity = 24;

    /// <summary>The study behind the spectra.</summary>
    /// <param name="queue">A queue of what is short: nobody waits for it behind what is long.</param>
    internal static PageStudy<RideAsked, RideAnswer, SpectraView> StudyIn(StudyQueue queue) => new(
        RideStudy.Run,
        answer => new SpectraView(answer.Figure(RideAnswer.Spectra), answer.Figure(RideAnswer.Transfer)),
        queue,
        Capacity);
}
