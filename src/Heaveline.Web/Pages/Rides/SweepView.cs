using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Rides;

/// <summary>
/// What the page shows of a sweep over speed. Made of figures and tables alone, so that it may be kept: an answer holds every spectrum.
/// </summary>
/// <param name="Sweep">Comfort and pitch against speed.</param>
/// <param name="Count">What the trade minds and the standard counts, of the first car; null where it has no seat.</param>
/// <param name="Tables">A table a car.</param>
/// <param name="Cautions">Where the numbers must be doubted.</param>
/// <param name="Csv">The tables as CSV.</param>
/// <param name="Json">All of it for machines.</param>
public sealed record SweepView(Figure Sweep, Figure? Count, IReadOnlyList<FactTable> Tables, IReadOnlyList<string> Cautions, byte[] Csv, string Json)
{
    private const int Capacity = 24;

    /// <summary>The study behind the sweep.</summary>
    internal static PageStudy<RideAsked, RideAnswer, SweepView> StudyIn(StudyQueue queue, string version) => new(
        RideStudy.Run,
        answer => new SweepView(
            answer.Figure(RideAnswer.Sweep),
            answer.FigureIds.Contains(RideAnswer.Count) ? answer.Figure(RideAnswer.Count) : null,
            answer.Tables,
            answer.Cautions,
            answer.Csv(),
            answer.Json(version, RideStudy.Question.Word)),
        queue,
        Capacity);
}
